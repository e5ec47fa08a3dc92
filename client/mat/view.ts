import type { Slot, Square } from '../../engine/child.ts';
import type { Cell } from './cells.ts';

/** What the mat shows: plain data, made anew after each action; the mat's elements hold nothing else. */
export interface SquareView {
  /** Counts of the bars of kind 1..10. */
  readonly bars: readonly number[];
  readonly again: boolean;
  readonly target: boolean;
  readonly held: boolean;
  readonly marked: boolean;
  /** Digits in the two corners, and the corner where the pen is; null: not written on. */
  readonly figures: {
    readonly own: number | null;
    readonly fromRight: number | null;
    readonly pen: Slot | null;
  } | null;
}

export interface TileView {
  readonly digit: number | null;
  readonly place: number;
  readonly again: boolean;
  readonly active: boolean;
  readonly marked: boolean;
}

export interface MatView {
  readonly name: string;
  readonly shape: { readonly rows: number; readonly columns: number; readonly origin: number };
  /** Columns that the problem needs; kept in view when the mat pans. */
  readonly needed: number;
  readonly squares: readonly (readonly SquareView[])[];
  readonly tiles: { readonly bottom: readonly TileView[]; readonly right: readonly TileView[] };
  /** The square that the question, or the fact, is about. */
  readonly asked: Square | null;
  /** What a hint marks, what is to be looked at again or what is asked about: it is kept in view, and the first that Tab comes to. */
  readonly call: Cell | null;
  /** The square that was last worked on: where a page that opens again goes on. */
  readonly last: Square | null;
  /** Whether a square's name tells its place; not where that is the question. */
  readonly tellsPlaces: boolean;
  /** Each bar's number beside it. */
  readonly numbers: boolean;
}
