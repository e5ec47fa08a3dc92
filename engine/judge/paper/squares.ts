import type { Desk } from '../../mat/desk.ts';
import type { Square } from '../../mat/geometry.ts';
import type { Entry, SquareLine } from '../../mat/sheet.ts';
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

/** One fact on the squares: what its own tiles make due and what stands in its two slots. */
export interface Fact {
  readonly pair: Square;
  /** null: a tile is missing, so nothing is owed or forbidden yet. */
  readonly due: number | null;
  readonly units: Entry | undefined;
  readonly tens: Entry | undefined;
  /** Slots where a digit stands now that names another pair. */
  readonly covered: readonly Part[];
  /** How much of it is amiss, as long as nothing of its row is lost. */
  readonly amiss: number;
}

/** One row of squares read one way. */
export interface RowRead {
  readonly found: readonly Fact[];
  /** Digits that say of themselves that they belong to another pair, by square. */
  readonly lost: readonly Entry[];
  readonly amiss: number;
}

/** Whether nothing more comes in this row, or anywhere. */
export interface Ends {
  readonly row: boolean;
  readonly all: boolean;
}

/** Digits of the facts of a row, by `factSlot`. */
export type FactDigits = readonly (number | undefined)[];

/** A row of squares as it reads best: its slots as usual, or all swapped. */
export interface RowOfFacts {
  /** What it was read from. */
  readonly tiles: Desk['tiles'];
  readonly line: SquareLine | undefined;
  readonly ends: Ends;
  readonly usual: RowRead;
  /** The other way round; the usual way again where that leaves nothing amiss. */
  readonly other: RowRead;
  /** The better of the two. */
  readonly best: RowRead;
  /** Nothing in it is a fault, whatever stands in other rows. */
  readonly quiet: boolean;
  /** The digits that were right where they stood, in slots where nothing right stands any more. */
  readonly lapsed: FactDigits;
}

/** By row of the mat. */
export type Squares = readonly RowOfFacts[];
