import type { Action, ActionOf } from '../../mat/action.ts';
import type { SlideAt } from '../../pupils/beliefs.ts';
import { slideAt } from '../../pupils/mat.ts';
import { digitsOn } from '../../pupils/tiles.ts';
import type { DoneWork } from '../done.ts';
import { doTo, type Lying, nothingLying } from './lying.ts';

/** `index`: into the log. `afterSliding`: whether anything had been slid before. */
interface Moved<N extends Action['do']> {
  readonly action: ActionOf<N>;
  readonly index: number;
  readonly afterSliding: boolean;
}

/** `bars`: as they lay before they were counted. */
export interface Counted extends Moved<'count'> {
  readonly bars: readonly number[];
}

export type Exchanged = Moved<'exchange'>;

export interface Slid extends Moved<'slide'> {
  readonly at: SlideAt;
}

/** A row, said before anything was slid: the beads that lay on it, the digits on the edges. */
export interface Said {
  readonly index: number;
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
    laid: Array.from({ length: rows }, () => new Array<number>(columns).fill(0)),
    recorded: new Map(),
    slid: false,
    mat: nothingLying(problem.mat),
  };
  const settled = walk.laid.map((row) => row.map(() => false));
  const done: Action[] = [];
  for (const [index, { action, refused }] of log.entries()) {
    if (refused !== undefined) continue;
    if (action.do === 'undo') {
      done.pop();
      walk.mat = nothingLying(problem.mat);
      for (const each of done) doTo(walk.mat, each);
      continue;
    }
    noteLaid(walk, settled, action);
    noteMove(walk, action, index);
    if (action.do === 'check' || action.do === 'hint' || action.do === 'finish') continue;
    done.push(action);
    doTo(walk.mat, action);
  }
  return walk;
}

function noteMove(walk: MatWalk, action: Action, index: number): void {
  const { mat, slid: afterSliding } = walk;
  switch (action.do) {
    case 'count': {
      const bars = mat.bars[action.square[0]]![action.square[1]]!.slice();
      walk.counts.push({ action, index, afterSliding, bars });
      break;
    }
    case 'exchange':
      walk.exchanges.push({ action, index, afterSliding });
      break;
    case 'slide': {
      const { from, to } = action;
      walk.slides.push({
        action,
        index,
        afterSliding,
        at: slideAt(mat.beads, from, from[0] - to[0]),
      });
      walk.slid = true;
      break;
    }
    case 'say':
      if (!('prompt' in action) && !afterSliding) walk.sayings.push(saidOf(mat, action, index));
      break;
    case 'write':
      if ('line' in action) noteRecorded(walk, action.line);
  }
}

function saidOf(
  { beads, tiles }: Lying,
  { row, answer }: { readonly row: number; readonly answer: string },
  index: number,
): Said {
  const [across, up] = [digitsOn(tiles.bottom), digitsOn(tiles.right)];
  return { index, row, answer, piles: beads[row]!.slice(), across, up };
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
