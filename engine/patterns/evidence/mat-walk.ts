import type { Action, ActionOf } from '../../mat/action.ts';
import { apply } from '../../mat/apply.ts';
import { emptyPosition, type Position, pileValue } from '../../mat/position.ts';
import type { DoneWork } from '../done.ts';

/** One action on bars, with the mat as it lay before. */
export interface MatMove<A extends Action = Action> {
  readonly action: A;
  readonly before: Position;
  readonly index: number;
  /** Whether anything had been slid before. */
  readonly afterSliding: boolean;
}

export interface MatWalk {
  readonly counts: readonly MatMove<ActionOf<'count'>>[];
  readonly exchanges: readonly MatMove<ActionOf<'exchange'>>[];
  readonly slides: readonly MatMove<ActionOf<'slide'>>[];
  readonly sayings: readonly MatMove<ActionOf<'say'>>[];
  /** Beads laid on a square before anything else was done with its pile, by [row][column]. */
  readonly laid: readonly (readonly number[])[];
  /** Beads of a row when its line was first written on. */
  readonly recorded: ReadonlyMap<number, readonly number[]>;
  readonly slid: boolean;
}

/** The log gone through once: every decision on bars in the place where it was taken. */
export function walkMat({ problem, log }: DoneWork): MatWalk {
  const { rows, columns } = problem.mat;
  let position = emptyPosition(rows, columns);
  const past: Position[] = [];
  const laid = Array.from({ length: rows }, () => Array.from({ length: columns }, () => 0));
  const settled = new Set<string>();
  const recorded = new Map<number, readonly number[]>();
  const moves: MatMove[] = [];
  let afterSliding = false;
  for (const [index, { action, refused }] of log.entries()) {
    if (refused !== undefined) continue;
    if (action.do === 'undo') {
      position = past.pop() ?? position;
      continue;
    }
    const after = apply(problem, position, action);
    if (typeof after === 'string') continue;
    noteLaid(laid, settled, action);
    noteRecorded(recorded, position, action);
    moves.push({ action, before: position, index, afterSliding });
    if (action.do !== 'check' && action.do !== 'hint' && action.do !== 'finish')
      past.push(position);
    if (action.do === 'slide') afterSliding = true;
    position = after;
  }
  const of = <N extends Action['do']>(name: N) =>
    moves.filter((move): move is MatMove<ActionOf<N>> => move.action.do === name);
  return {
    counts: of('count'),
    exchanges: of('exchange'),
    slides: of('slide'),
    sayings: of('say'),
    laid,
    recorded,
    slid: afterSliding,
  };
}

function noteLaid(laid: number[][], settled: Set<string>, action: Action): void {
  if (action.do === 'layBars' || action.do === 'liftBars') {
    const [row, column] = action.square;
    const beads = action.kind * action.count * (action.do === 'layBars' ? 1 : -1);
    if (!settled.has(action.square.join(':'))) laid[row]![column]! += beads;
  }
  if (action.do === 'count' || action.do === 'makeTen') settled.add(action.square.join(':'));
  if (action.do === 'exchange' || action.do === 'slide') settled.add(action.from.join(':'));
}

function noteRecorded(
  recorded: Map<number, readonly number[]>,
  { paper, piles }: Position,
  action: Action,
): void {
  if (action.do !== 'write' || !('line' in action)) return;
  const row = paper.begun[action.line];
  if (row === undefined || recorded.has(row)) return;
  recorded.set(row, piles[row]!.map(pileValue));
}
