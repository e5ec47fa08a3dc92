import { type Hint, hintFor } from './hint.ts';
import { findingsOf, momentOf } from './judge/findings.ts';
import { advance, copyRun, physicsOf, type Run, sceneOf, startRun, viewOf } from './judge/run.ts';
import type { Finding, Findings } from './judge/scene.ts';
import type { Suggestion, Work } from './judge/work.ts';
import type { Action } from './mat/action.ts';
import type { Problem } from './problem.ts';
import { finishProblem } from './stages/captions.ts';
import { stageRules } from './stages/known.ts';
import type { HintLevel, RefusalCode } from './vocabulary.ts';

/**
 * The judge's own memory of a work, every state to which undo may lead among it: not part of what is seen, and gone
 * with the work. Only a work that is gone on from has one: a class's works are many times smaller without.
 */
const RUNS = new WeakMap<Work, Run>();

function seen(run: Run): Work {
  const work = viewOf(run);
  RUNS.set(work, run);
  return work;
}

/** The run behind a work; a work that was replayed, or came from elsewhere (JSON), is replayed once from its log. */
function runOf(work: Work): Run {
  const known = RUNS.get(work);
  if (known !== undefined) return known;
  const run = runThrough(
    work.problem,
    work.log.map(({ action }) => action),
  );
  RUNS.set(work, run);
  return run;
}

function runThrough(problem: Problem, actions: readonly Action[]): Run {
  const run = startRun(problem, stageRules(problem.stage));
  for (const action of actions) advance(run, action);
  return run;
}

export function startWork(problem: Problem): Work {
  return seen(startRun(problem, stageRules(problem.stage)));
}

/** The work after one more action; the given work stays as it is. A refused action is only logged. */
export function act(work: Work, action: Action): Work {
  const run = copyRun(runOf(work));
  advance(run, action);
  return seen(run);
}

/** The work after all of these actions: `act` again and again, in one go. */
export function actAll(work: Work, actions: readonly Action[]): Work {
  const run = copyRun(runOf(work));
  for (const action of actions) advance(run, action);
  return seen(run);
}

/** The fold of `act` over the actions, in one go. */
export function replay(problem: Problem, actions: readonly Action[]): Work {
  return viewOf(runThrough(problem, actions));
}

/** Why real material could not do this now; null: it can. */
export function refusalOf(work: Work, action: Action): RefusalCode | null {
  const after = physicsOf(runOf(work), action);
  return typeof after === 'string' ? after : null;
}

/** The next sensible action from any position; null once the problem is finished. */
export function nextMove(work: Work): Suggestion | null {
  return nextOf(runOf(work));
}

function nextOf(run: Run): Suggestion | null {
  const { position } = run.state;
  if (position.finished.problem) return null;
  const scene = sceneOf(run);
  let found: readonly Finding[] | null = null;
  const findings: Findings = {
    at: (step) => {
      found ??= findingsOf(run.stage, scene, momentOf(position));
      return found[step];
    },
  };
  return run.stage.next(scene, findings) ?? finishProblem();
}

/** The words of a hint; that it was asked for is an action of its own. */
export function hint(work: Work, level: HintLevel, step?: string): Hint | null {
  return hintFor(runOf(work), level, step);
}

/** Longer than any presentation on the largest mat: one that went round in circles would end here. */
const MOST_MOVES = 5_000;

/** The whole worked presentation, always to the finish of the problem; replayed it earns full marks. */
export function worked(problem: Problem): readonly Suggestion[] {
  const run = startRun(problem, stageRules(problem.stage));
  const moves: Suggestion[] = [];
  while (!run.state.position.finished.problem) {
    const next = moves.length < MOST_MOVES ? nextOf(run) : null;
    const move = next ?? finishProblem();
    moves.push(move);
    advance(run, move.action);
  }
  return moves;
}
