import type { Problem } from '../../problem.ts';
import { playThrough } from '../../pupils/play.ts';
import { doneWork } from '../done.ts';
import { differences, readWorks, type StepOfWork, stepsOf } from '../reading.ts';
import type { Variant } from '../variants.ts';

/** What a pattern makes of one problem when nothing else goes wrong. */
export interface Showing {
  /** The actions: equal where two patterns cannot be told apart by anything that is done. */
  readonly outcome: string;
  /** Steps that the pattern changes, each by its own doing. */
  readonly steps: readonly StepOfWork[];
}

export function showingOf(problem: Problem, variant: Variant): Showing {
  const actions = playThrough(problem, variant.beliefs);
  const reading = readWorks([doneWork(problem, actions)]);
  const steps = stepsOf(differences(reading, reading.heldBy([variant]), reading.heldBy([])));
  return { outcome: JSON.stringify(actions), steps };
}
