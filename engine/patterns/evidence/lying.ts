import type { Action } from '../../mat/action.ts';
import type { Mat, Square } from '../../mat/geometry.ts';

/**
 * What lies on a mat, changed in place: physics has let every action of a log pass, and to make a new
 * position for each would cost more than all that is read from them. A test holds it to physics.
 */
export interface Lying {
  /** How many bars of each kind, 1..10, by [row][column]. */
  readonly bars: readonly (readonly number[][])[];
  /** Their beads. */
  readonly beads: readonly number[][];
  readonly tiles: Readonly<Record<'bottom' | 'right', (number | null)[]>>;
  /** The row that each line was begun for. */
  readonly begun: Record<string, number>;
}

const TEN = 10;

export function nothingLying({ rows, columns }: Mat): Lying {
  const squares = <T>(nothing: () => T): T[][] =>
    Array.from({ length: rows }, () => Array.from({ length: columns }, nothing));
  return {
    bars: squares(() => new Array<number>(TEN).fill(0)),
    beads: squares(() => 0),
    tiles: { bottom: new Array(columns).fill(null), right: new Array(rows).fill(null) },
    begun: {},
  };
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
    case 'slide': {
      const slid = clear(mat, action.from);
      for (let kind = 1; kind <= TEN; kind += 1) lay(mat, action.to, kind, slid[kind - 1]!);
    }
  }
}

/** Kind 0 is no bar. */
function lay({ bars, beads }: Lying, [row, column]: Square, kind: number, count: number): void {
  if (kind > 0) bars[row]![column]![kind - 1]! += count;
  beads[row]![column]! += kind * count;
}

/** What lay there. */
function clear({ bars, beads }: Lying, [row, column]: Square): readonly number[] {
  const own = bars[row]![column]!;
  const before = own.slice();
  own.fill(0);
  beads[row]![column] = 0;
  return before;
}
