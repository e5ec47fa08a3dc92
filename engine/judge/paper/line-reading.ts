import type { Digits } from '../../mat/sheet.ts';
import type { Columns } from './columns.ts';

/**
 * `absent`: nothing is due there; `leftOut`: a zero at the end of the decimals; `waiting`: written, but what it
 * is made of is not complete yet; `missing`: due and not written.
 */
export type Mark = 'right' | 'wrong' | 'missing' | 'absent' | 'leftOut' | 'waiting';

/** How a column reads, and with it all that the column above needs of those below. */
export interface ColumnRead {
  readonly given: number | null;
  readonly due: number;
  readonly mark: Mark;
  /** What is carried in as written: `none` written, as due, not as due, not to be said yet. */
  readonly carry: 'none' | 'right' | 'wrong' | 'waiting';
  readonly noted: number | null;
  readonly carryDue: number;
  /** What it may hand on, bit c for a carry of c, and what it most likely does. */
  readonly hands: number;
  readonly likely: number;
  /** It is written and judged, so what it hands on is known. */
  readonly known: boolean;
  /** Nothing is written from here down. */
  readonly blank: boolean;
}

export interface Progress {
  /** Nothing more is to come: what is not there is missing. */
  readonly final: boolean;
  /** So many columns rest on work that is complete. */
  readonly ready: number;
}

/** What stands on a line, as it is read at one shift. */
export interface Written {
  readonly spec: LineSpec;
  /** How far the digits stand to the left of where they are due. */
  readonly shift: number;
  /** The same for the carries. */
  readonly carried: number;
  readonly digits: Digits;
  readonly carries: Digits;
  /** So many digits made the whole line when it was right, and all still stand; null: it never was. */
  readonly ended: number | null;
  /** Highest column that holds a digit or a carry; −1: none. */
  readonly highest: number;
}

/** What was right in a line as it was read one way. */
export interface KeptLine {
  /** How it was read (`wayOf`). */
  readonly way: string;
  /** The line as it read when something more became right: what is right in it is kept, */
  readonly reading: LineReading;
  /** and what was right before and is not so in it: digits by place from the origin, */
  readonly digits: readonly (KeptDigit | undefined)[];
  /** and carries by how far to the left they stood. */
  readonly carries: readonly { readonly by: number; readonly carries: Digits }[];
  /** So many digits made the whole line; 0: it never was whole. */
  readonly end: number;
  /** With this as `ended` the line reads as in the reading. */
  readonly ended: number | null;
}

/** A digit that was right, and what it may have handed on then. */
export type KeptDigit = Pick<ColumnRead, 'given' | 'hands'>;

/** What a line should hold, and which step answers for what. Places are counted from the origin. */
export interface LineSpec {
  /** Names the way in which a row is read, where it is not the usual one: what was right stays so in the same way only. */
  readonly name: string;
  /** Indexes of the line (`NO_LINE`: not begun) and of its carries. */
  readonly line: number;
  readonly carries: readonly number[];
  /** Where the lowest column stands; below it there are placeholders. */
  readonly lowest: number;
  readonly columns: Columns;
  readonly progress: Progress;
  /** Decimals of the product: zeros at their end may be left out. */
  readonly decimals: number;
  /** Whose steps answer for it: those of a row, or of the sum (−1). */
  readonly row: number;
}

/** Something that is not as due. `at`: the place on paper, `acts`: the actions that wrote what it concerns. */
export interface Fault {
  readonly step: number;
  readonly at: number;
  readonly acts: readonly number[];
  readonly given: number | null;
  readonly due: number;
  readonly missing: boolean;
  /** It is the carry that is wrong. */
  readonly carry?: true;
}

export interface LineReading {
  readonly spec: LineSpec;
  readonly shift: number;
  readonly carried: number;
  /** From the lowest column up; while the line surely lacks digits, only as far as anything is written (`whole`). */
  readonly reads: readonly ColumnRead[];
  readonly short: boolean;
  readonly written: Written;
  readonly faults: readonly Fault[];
}
