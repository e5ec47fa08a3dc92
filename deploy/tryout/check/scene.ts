import { type ChildAction, childWork } from '../../../tests/support/child-work.ts';
import { DEMO_ACTIVITIES } from '../demo.ts';
import { expectedScore, stepCount } from './expected.ts';

/** Who works in the check. */
export const CHILD = { id: '4', name: 'Ada' };

const [activity] = DEMO_ACTIVITIES;
if (!activity) throw new Error('The demo has no activity.');

export const ACTIVITY = activity;

/** The first problem with one slip and its correction, the second clean. */
export const WORK: readonly ChildAction[][] = activity.problems.map(
  ({ multiplicand, multiplier }, index) =>
    childWork(multiplicand, multiplier, index === 0 ? [0, 0] : null),
);

export const expected = (): number => {
  const steps = activity.problems
    .map(({ multiplicand, multiplier }) => stepCount(multiplicand, multiplier))
    .reduce((sum, count) => sum + count, 0);
  return expectedScore(steps, 1, activity.points ?? 0);
};
