import type { Action } from '../../mat/action.ts';
import { isSameSquare, type Mat, type Square } from '../../mat/geometry.ts';

/**
 * What lies on a mat, changed in place: physics has let every action of a log pass, and to make a new
 * position for each would cost more than all that is read from them. A test holds it to physics.
 */
export interface Lying {
  readonly columns: number;
  /** How many bars of each kind, 1..10, square after square in one list: a list a square would cost more to make. */
  readonly bars: number[];
  /** Their beads, by [row][column]. */
  readonly beads: readonly number[][];
  readonly tiles: Readonly<Record<'bottom' | 'right', (number | null)[]>>;
  /** The row that each line was begun for. */
  readonly begun: Record<string, number>;
}

const TEN = 10;

export function nothingLying({ rows, columns }: Mat): Lying {
  const beads: number[][] = [];
  for (let row = 0; row < rows; row += 1) beads.push(new Array<number>(columns).fill(0));
  return {
    columns,
    bars: new Array<number>(rows * columns * TEN).fill(0),
    beads,
    tiles: { bottom: new Array(columns).fill(null), right: new Array(rows).fill(null) },
    begun: {},
  };
}

/** How many bars of each kind lie on a square. */
export function barsOn({ columns, bars }: Lying, square: Square): number[] {
  const from = (square[0] * columns + square[1]) * TEN;
  return bars.slice(from, from + TEN);
}

/** Does what an action does to bars, tiles and begun lines. */
export function doTo(mat: Lying, action: Action): void {
  switch (action.do) {
    case 'layTile':
      mat.tiles[action.edge][action.index] = action.digit;
      break;
    case 'liftTile':
      mat.tiles[action.edge][action.index] = null;
      break;
    case 'begin':
      mat.begun[action.line] = action.row;
      break;
    case 'layBars':
      lay(mat, action.square, action.kind, action.count);
      break;
    case 'liftBars':
      lay(mat, action.square, action.kind, -action.count);
      break;
    case 'count':
      clear(mat, action.square);
      lay(mat, action.square, TEN, Math.floor(action.total / 10));
      lay(mat, action.square, action.total % 10, 1);
      break;
    case 'makeTen':
      for (const kind of action.bars) lay(mat, action.square, kind, -1);
      if (action.split) lay(mat, action.square, action.split.kind - action.split.take, 1);
      lay(mat, action.square, TEN, 1);
      break;
    case 'exchange':
      lay(mat, action.from, TEN, -action.tens);
      lay(mat, action.to, 1, action.ones);
      break;
    case 'slide':
      slide(mat, action.from, action.to);
  }
}

/** Kind 0 is no bar. */
function lay(mat: Lying, square: Square, kind: number, count: number): void {
  const [row, column] = [square[0], square[1]];
  if (kind > 0) mat.bars[(row * mat.columns + column) * TEN + kind - 1]! += count;
  mat.beads[row]![column]! += kind * count;
}

function clear(mat: Lying, square: Square): void {
  const from = (square[0] * mat.columns + square[1]) * TEN;
  for (let at = from; at < from + TEN; at += 1) mat.bars[at] = 0;
  mat.beads[square[0]]![square[1]] = 0;
}

/** The pile comes to lie with what is there. */
function slide(mat: Lying, from: Square, to: Square): void {
  if (isSameSquare(from, to)) return;
  const first = (from[0] * mat.columns + from[1]) * TEN;
  for (let kind = 1; kind <= TEN; kind += 1) lay(mat, to, kind, mat.bars[first + kind - 1]!);
  clear(mat, from);
}
