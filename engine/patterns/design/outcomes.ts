import type { Problem } from '../../problem.ts';
import { type Beliefs, RIGHT_WAY } from '../../pupils/beliefs.ts';
import { playThrough } from '../../pupils/play.ts';
import type { Variant } from '../variants.ts';

/** A name for what is done, action for action; equal names: nothing tells the two apart. */
function outcomeOf(problem: Problem, beliefs: Beliefs): string {
  return JSON.stringify(playThrough(problem, beliefs));
}

/** By variant, the number of its outcome in the problem; 0: as the right way has it. */
export type Outcomes = readonly number[];

export function outcomesOf(problem: Problem, variants: readonly Variant[]): Outcomes {
  const numbers = new Map([[outcomeOf(problem, RIGHT_WAY), 0]]);
  return variants.map(({ beliefs }) => {
    const outcome = outcomeOf(problem, beliefs);
    if (!numbers.has(outcome)) numbers.set(outcome, numbers.size);
    return numbers.get(outcome)!;
  });
}

/** Whether the two are done alike in this problem. */
export function doneAlike(problem: Problem, one: Variant, other: Variant): boolean {
  return outcomeOf(problem, one.beliefs) === outcomeOf(problem, other.beliefs);
}
