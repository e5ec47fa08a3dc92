import type { Work } from '../judge/work.ts';
import type { Action } from '../mat/action.ts';
import { apply } from '../mat/apply.ts';
import { emptyPosition, type Position } from '../mat/position.ts';
import type { Problem } from '../problem.ts';

/** What was done with a problem. Explaining needs no judgement: every work has this. */
export type DoneWork = Pick<Work, 'problem' | 'position' | 'log'>;

/** The work of actions that real material can do and nobody takes back, without judging it. */
export function doneWork(problem: Problem, actions: readonly Action[]): DoneWork {
  let position: Position = emptyPosition(problem.mat.rows, problem.mat.columns);
  const log = actions.map((action) => {
    const after = apply(problem, position, action);
    if (typeof after === 'string') return { action, refused: after };
    position = after;
    return { action };
  });
  return { problem, position, log };
}
