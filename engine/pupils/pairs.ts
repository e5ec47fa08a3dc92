import type { Mat, Square } from '../mat/geometry.ts';
import { type BarsLaid, type Beliefs, believed } from './beliefs.ts';
import { digitsOn, type Tiles } from './tiles.ts';

/** A pair of tiles as it is worked: with which digits, and put down where. */
interface PairWorked {
  readonly pair: Square;
  readonly square: Square;
  readonly a: number;
  readonly b: number;
  /** The product as it is remembered; 0: nothing is put down. */
  readonly fact: number;
}

/** The pairs of a row that are worked at all and whose square is on the mat, from the units on. */
export function pairsOfRow(mat: Mat, beliefs: Beliefs, tiles: Tiles, row: number): PairWorked[] {
  const [across, up] = [digitsOn(tiles.bottom), digitsOn(tiles.right)];
  if (row >= up.length) return [];
  return across.flatMap((a, column) => {
    const at = { row, column, across, up };
    if (!believed(beliefs, 'works', at, true)) return [];
    const b = believed(beliefs, 'partner', at, up[row]!);
    const to = column + believed(beliefs, 'aside', at, 0);
    if (to < 0 || to >= mat.columns) return [];
    const fact = believed(beliefs, 'fact', { a, b }, a * b);
    return [{ pair: [row, column], square: [row, to], a, b, fact }];
  });
}

/** The bars of one square. */
export interface SquareLaid {
  readonly pair: Square;
  readonly square: Square;
  readonly bars: readonly BarsLaid[];
}

/** The multiplicand's bar as often as the multiplier says; where a zero makes something: that one bar. */
export function barsOfRow(mat: Mat, beliefs: Beliefs, tiles: Tiles, row: number): SquareLaid[] {
  const [across, up] = [digitsOn(tiles.bottom), digitsOn(tiles.right)];
  return pairsOfRow(mat, beliefs, tiles, row).map(({ pair, square, a, b, fact }) => {
    const kept = fact > 0 ? [{ kind: fact, count: 1 }] : [];
    const right = a > 0 && b > 0 ? [{ kind: a, count: b }] : kept;
    const at = { row, column: pair[1], across, up, kind: a, times: b };
    return { pair, square, bars: believed(beliefs, 'lay', at, right) };
  });
}
