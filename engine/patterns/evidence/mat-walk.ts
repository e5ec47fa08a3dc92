import type { Action, ActionOf } from '../../mat/action.ts';
import type { Square } from '../../mat/geometry.ts';
import type { Problem } from '../../problem.ts';
import type { SlideAt } from '../../pupils/beliefs.ts';
import { slideAt } from '../../pupils/mat.ts';
import { digitsOn } from '../../pupils/tiles.ts';
import type { DoneWork } from '../done.ts';
import { barsOn, doTo, type Lying, nothingLying } from './lying.ts';

/** A total said of a pile: its bars as they lay before, and their beads. */
export interface Counted {
  readonly square: Square;
  readonly bars: readonly number[];
  readonly beads: number;
  /** Counted where a pair's bars were laid, before anything was slid. */
  readonly ofPair: boolean;
  readonly total: number;
}

/** `index`: into the log. `afterSliding`: whether anything had been slid before. */
export interface Exchanged {
  readonly action: ActionOf<'exchange'>;
  readonly index: number;
  readonly afterSliding: boolean;
}

/** `given`: the column that a pile came to; null: it still lies there. */
export interface Slid {
  readonly at: SlideAt;
  readonly given: number | null;
}

/** A row, said before anything was slid: the beads that lay on it, the digits on the edges. */
export interface Said {
  readonly row: number;
  readonly answer: string;
  readonly piles: readonly number[];
  readonly across: readonly number[];
  readonly up: readonly number[];
}

/** Every decision on bars, by the mat as it lay then. */
export interface MatWalk {
  readonly counts: Counted[];
  readonly exchanges: Exchanged[];
  readonly slides: Slid[];
  readonly sayings: Said[];
  /** Beads laid on a square before anything else was done with its pile, by [row][column]. */
  readonly laid: readonly number[][];
  /** Beads of a row when its line was first written on. */
  readonly recorded: Map<number, readonly number[]>;
  slid: boolean;
  /** What lies there in the end. */
  mat: Lying;
}

/** The log gone through once. */
export function walkMat({ problem, log }: DoneWork): MatWalk {
  const { rows, columns } = problem.mat;
  const walk: MatWalk = {
    counts: [],
    exchanges: [],
    slides: [],
    sayings: [],
    laid: nothingOn(rows, columns, 0),
    recorded: new Map(),
    slid: false,
    mat: nothingLying(problem.mat),
  };
  const settled = nothingOn(rows, columns, false);
  for (const [index, { action, refused }] of log.entries()) {
    if (refused !== undefined) continue;
    if (action.do === 'undo') {
      walk.mat = nothingLying(problem.mat);
      for (const each of doneBefore(log, index + 1)) doTo(walk.mat, each);
      continue;
    }
    noteLaid(walk, settled, action);
    noteMove(walk, problem, action, index);
    doTo(walk.mat, action);
  }
  return walk;
}

/** What stays done of so many entries of a log. Few take anything back: it is not kept along the way. */
function doneBefore(log: DoneWork['log'], entries: number): Action[] {
  const done: Action[] = [];
  for (const { action, refused } of log.slice(0, entries)) {
    if (refused !== undefined) continue;
    if (action.do === 'undo') done.pop();
    else if (action.do !== 'check' && action.do !== 'hint' && action.do !== 'finish')
      done.push(action);
  }
  return done;
}

function nothingOn<T>(rows: number, columns: number, nothing: T): T[][] {
  const squares: T[][] = [];
  for (let row = 0; row < rows; row += 1) squares.push(new Array<T>(columns).fill(nothing));
  return squares;
}

function noteMove(walk: MatWalk, { multiplicand }: Problem, action: Action, index: number): void {
  const { mat, slid: afterSliding } = walk;
  switch (action.do) {
    case 'count': {
      const { square, total } = action;
      const [row, column] = square;
      const bars = barsOn(mat, square);
      const ofPair = !afterSliding && column < multiplicand.digits.length;
      walk.counts.push({ square, bars, beads: mat.beads[row]![column]!, ofPair, total });
      break;
    }
    case 'exchange':
      walk.exchanges.push({ action, index, afterSliding });
      break;
    case 'slide': {
      const { from, to } = action;
      walk.slides.push({ at: slideAt(mat.beads, from, from[0] - to[0]), given: to[1] });
      walk.slid = true;
      break;
    }
    case 'say':
      if (!('prompt' in action) && !afterSliding) walk.sayings.push(saidOf(mat, action));
      break;
    case 'write':
      if ('line' in action) noteRecorded(walk, action.line);
  }
}

function saidOf(
  { beads, tiles }: Lying,
  { row, answer }: { readonly row: number; readonly answer: string },
): Said {
  const [across, up] = [digitsOn(tiles.bottom), digitsOn(tiles.right)];
  return { row, answer, piles: beads[row]!.slice(), across, up };
}

function noteRecorded({ recorded, mat }: MatWalk, line: string): void {
  const row = mat.begun[line];
  if (row === undefined || recorded.has(row)) return;
  recorded.set(row, mat.beads[row]!.slice());
}

/** From when its pile was first counted, exchanged or slid a square is settled. */
function noteLaid({ laid }: MatWalk, settled: boolean[][], action: Action): void {
  switch (action.do) {
    case 'layBars':
    case 'liftBars': {
      const [row, column] = action.square;
      const beads = action.kind * action.count * (action.do === 'layBars' ? 1 : -1);
      if (!settled[row]![column]) laid[row]![column]! += beads;
      break;
    }
    case 'count':
    case 'makeTen':
      settled[action.square[0]]![action.square[1]] = true;
      break;
    case 'exchange':
    case 'slide':
      settled[action.from[0]]![action.from[1]] = true;
  }
}
