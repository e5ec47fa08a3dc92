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

/** One row of squares in one way of reading it; `swapped`: its slots are used the other way round. */
export interface RowWay {
  readonly row: number;
  readonly line: SquareLine | undefined;
  readonly tiles: Desk['tiles'];
  readonly ends: Ends;
  readonly swapped: boolean;
}

/** How it reads that way. */
export interface RowRead extends RowWay {
  /** How many digits say of themselves that they belong to another pair than that of their slot. */
  readonly lost: number;
  readonly amiss: number;
}

/** Whether nothing more comes in this row, or anywhere. */
export interface Ends {
  readonly row: boolean;
  readonly all: boolean;
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
}

/** Digits of the facts of a row, by `factSlot`. */
export type FactDigits = readonly (number | undefined)[];

/** A row of squares as it reads best: its slots as usual, or all swapped. */
export interface RowOfFacts {
  /** The better of the two ways. */
  readonly best: RowRead;
  /** The other one; null: it was not looked at, for the usual way leaves nothing amiss. */
  readonly other: RowRead | null;
  /** Nothing in it is a fault, whatever stands in other rows. */
  readonly quiet: boolean;
  /** The digits that were right where they stood, in slots where nothing right stands any more. */
  readonly lapsed: FactDigits;
}

/** By row of the mat. */
export type Squares = readonly RowOfFacts[];

/**
 * What is remembered of a row: how it read when it was last looked at; what stands there has been the same since, so what
 * is written on squares is noted before anything else reads them.
 */
export interface RowKept {
  readonly tiles: Desk['tiles'];
  readonly ends: Ends;
  readonly swapped: boolean;
  readonly lapsed: FactDigits;
}
