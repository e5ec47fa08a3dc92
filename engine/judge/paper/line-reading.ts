import type { ColumnRead, Progress, Written } from './carrying.ts';
import type { Columns } from './columns.ts';

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
  /** How far the digits stand to the left of where they are due. */
  readonly shift: number;
  /** The same for the carries. */
  readonly carried: number;
  /** From the lowest column up; while the line surely lacks digits, only as far as anything is written (`whole`). */
  readonly reads: readonly ColumnRead[];
  readonly short: boolean;
  readonly written: Written;
  readonly faults: readonly Fault[];
}
