import type { Problem } from '../../problem.ts';
import { playThrough } from '../../pupils/play.ts';
import { doneWork } from '../done.ts';
import { differences, readWorks, type StepOfWork, stepsOf, type Variant } from '../reading.ts';

/** What a pattern makes of one problem when nothing else goes wrong. */
export interface Showing {
  /** The actions: equal where two patterns cannot be told apart by anything that is done. */
  readonly outcome: string;
  /** Steps that the pattern changes, each by its own doing. */
  readonly steps: readonly StepOfWork[];
}

export function showingOf(problem: Problem, variant: Variant): Showing {
  const actions = playThrough(problem, variant.beliefs);
  const { rightWay, expectedOf } = readWorks([doneWork(problem, actions)]);
  const steps = stepsOf(differences(expectedOf([variant]), rightWay));
  return { outcome: JSON.stringify(actions), steps };
}
