import type { Action, ActionOf } from '../../mat/action.ts';
import type { Square } from '../../mat/geometry.ts';
import type { SlideAt } from '../../pupils/beliefs.ts';
import { slideAt } from '../../pupils/mat.ts';
import { digitsOn } from '../../pupils/tiles.ts';
import type { DoneWork } from '../done.ts';
import { type FirstDone, noteFirst, nothingDone } from './first-done.ts';
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
  readonly first: FirstDone;
  slid: boolean;
  /** Digits of the multiplicand. */
  readonly across: number;
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
    first: nothingDone(problem),
    slid: false,
    across: problem.multiplicand.digits.length,
    mat: nothingLying(problem.mat),
  };
  const settled = nothingOn(rows, columns, false);
  for (let index = 0; index < log.length; index += 1) {
    const { action, refused } = log[index]!;
    if (refused !== undefined) continue;
    if (action.do === 'undo') {
      walk.mat = nothingLying(problem.mat);
      for (const each of doneBefore(log, index + 1)) doTo(walk.mat, each);
      continue;
    }
    noteFirst(walk.first, problem, action);
    note(walk, settled, action, index);
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

/** Notes what is done before it is done. */
function note(walk: MatWalk, settled: boolean[][], action: Action, index: number): void {
  switch (action.do) {
    case 'layBars':
      noteLaid(walk, settled, action.square, action.kind * action.count);
      break;
    case 'liftBars':
      noteLaid(walk, settled, action.square, -action.kind * action.count);
      break;
    case 'makeTen':
      settle(settled, action.square);
      break;
    case 'count':
      settle(settled, action.square);
      noteCount(walk, action);
      break;
    case 'exchange':
      settle(settled, action.from);
      walk.exchanges.push({ action, index, afterSliding: walk.slid });
      break;
    case 'slide':
      settle(settled, action.from);
      noteSlide(walk, action);
      break;
    case 'say':
      if (!('prompt' in action) && !walk.slid) walk.sayings.push(saidOf(walk.mat, action));
      break;
    case 'write':
      if ('line' in action) noteRecorded(walk, action.line);
  }
}

/** From when its pile was first counted, exchanged or slid a square is settled. */
function settle(settled: boolean[][], square: Square): void {
  settled[square[0]]![square[1]] = true;
}

function noteLaid(
  { laid }: MatWalk,
  settled: readonly (readonly boolean[])[],
  square: Square,
  beads: number,
): void {
  const [row, column] = [square[0], square[1]];
  if (!settled[row]![column]) laid[row]![column]! += beads;
}

function noteCount(walk: MatWalk, { square, total }: ActionOf<'count'>): void {
  const { mat, slid, across } = walk;
  const beads = mat.beads[square[0]]![square[1]]!;
  const ofPair = !slid && square[1] < across;
  walk.counts.push({ square, bars: barsOn(mat, square), beads, ofPair, total });
}

function noteSlide(walk: MatWalk, { from, to }: ActionOf<'slide'>): void {
  const at = slideAt(walk.mat.beads, from, from[0] - to[0]);
  walk.slides.push({ at, given: to[1] });
  walk.slid = true;
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
