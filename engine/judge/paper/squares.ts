import type { Square } from '../../mat/geometry.ts';
import type { Slot } from '../../vocabulary.ts';

/** Where the two digits of a fact stand: units on its own square, tens on the square to the left. */
export type Part = 'units' | 'tens';
export const PARTS: readonly Part[] = ['units', 'tens'];

/** `swapped`: the child uses the two slots the other way round, for a whole row. */
export function slotOf(part: Part, swapped: boolean): Slot {
  return (part === 'units') === swapped ? 'fromRight' : 'own';
}

export function squareOf([row, column]: Square, part: Part): Square {
  return part === 'units' ? [row, column] : [row, column + 1];
}

/** A digit on a square, and the action that wrote it. `of`: the pair that it says it belongs to. */
export interface Entry {
  readonly digit: number;
  readonly of: Square | undefined;
  readonly square: Square;
  readonly slot: Slot;
  readonly act: number;
}

/** What stands on the squares of a row, by column. Replaced whenever a digit there is written or rubbed out. */
export type SquareRow = Readonly<Record<Slot, readonly (Entry | undefined)[]>>;

export function blankRow(columns: number): SquareRow {
  const nothing = Array.from({ length: columns }, () => undefined);
  return { own: nothing, fromRight: nothing };
}
