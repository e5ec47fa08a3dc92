/** What the mat shows: plain data, made anew after each action; the mat's elements hold nothing else. */
export interface SquareView {
  /** Counts of the bars of kind 1..10. */
  readonly bars: readonly number[];
  readonly again: boolean;
  readonly target: boolean;
  readonly held: boolean;
  readonly marked: boolean;
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
  /** Each bar's number beside it. */
  readonly numbers: boolean;
}
