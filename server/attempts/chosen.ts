import type { WrittenProblem } from '../../engine/index.ts';
import type { ActivityVersion } from '../activities/schema.ts';
import type { Attempt } from './schema.ts';

type Offered = Pick<ActivityVersion, 'problems' | 'choice'>;
type Picked = Pick<Attempt, 'chosen'>;

/** Whether the learner has still to pick one of the problems. */
export const isToChoose = ({ choice }: Offered, { chosen }: Picked): boolean =>
  choice === true && (chosen ?? null) === null;

/** What is worked in an attempt: all problems of the activity, or the one that was picked; none before that. */
export function problemsOf(activity: Offered, { chosen }: Picked): readonly WrittenProblem[] {
  if (activity.choice !== true) return activity.problems;
  return activity.problems.filter((_, index) => index === chosen);
}
