import type { Stage } from '../vocabulary.ts';
import type { FactEntry, FactSet } from './fact-set.ts';
import type { Range } from './range.ts';
import type { ZeroCondition } from './zeros.ts';

/** `3` is exactly three; an end left out is open. Both ends are included. */
export type WrittenRange = number | { readonly from?: number; readonly to?: number };

/**
 * "none": no zero at all; "some": at least one, anywhere; otherwise, for the zeros `inside` (another
 * digit than zero somewhere on both sides) and `atTheEnd`: true must, false must not, left out may.
 */
export type WrittenZeros =
  | 'none'
  | 'some'
  | { readonly inside?: boolean; readonly atTheEnd?: boolean };

export interface WrittenFactor {
  /** Digits laid: from the first that is not zero to the last one written. 0.05 has one digit. */
  readonly digits?: WrittenRange;
  readonly zeros?: WrittenZeros;
  /** Places after the point, 0 to 8; left out: a whole number. */
  readonly decimals?: WrittenRange;
}

/**
 * Which problems are wanted, as JSON. Every entry may be left out, and is then no condition.
 *
 * ```json
 * {
 *   "stage": "bars",
 *   "multiplicand": { "digits": 3, "zeros": { "inside": true }, "decimals": 1 },
 *   "multiplier": { "digits": { "from": 2, "to": 3 }, "zeros": "none" },
 *   "exchanges": { "from": 1, "to": 2 },
 *   "largestPile": { "to": 42 },
 *   "facts": { "allowed": [2, 5, [6, 7]], "required": [[6, 7]], "avoided": [[5, 5]] },
 *   "product": { "digits": 5 },
 *   "mat": { "rows": 4, "columns": 9 },
 *   "count": 20,
 *   "seed": 7
 * }
 * ```
 *
 * A number's first digit is never zero, so 0 itself is not made. Without a mat a problem has to fit on
 * the largest, 6 rows by 13 columns.
 */
export interface WrittenSpecification {
  /** `bars1` has one row, `bars` several, `walk` no numbers. Left out: one of these two, by the rows. */
  readonly stage?: Stage;
  readonly multiplicand?: WrittenFactor;
  readonly multiplier?: WrittenFactor;
  /**
   * Exchanges in a row: its squares whose pile, with what comes in from the right, reaches ten, before
   * sliding. A row of the digit 0 has none. One range holds for every row; a list has one range a row,
   * units row first, for at most three rows; the rows must exist, and further rows are free.
   */
  readonly exchanges?: WrittenRange | readonly WrittenRange[];
  /** Beads in the largest pile of any square before sliding, with what comes in from the right. */
  readonly largestPile?: WrittenRange;
  /**
   * Facts of two digits from 1 to 9, order ignored; `[6, 7]` is one fact, `6` the table of six.
   * Allowed: the problem has no others. Required: it has one of each entry. Avoided: it has none.
   */
  readonly facts?: {
    readonly allowed?: readonly FactEntry[];
    readonly required?: readonly FactEntry[];
    readonly avoided?: readonly FactEntry[];
  };
  /** Digits of the product, its point and zeros before the first other digit left aside. */
  readonly product?: { readonly digits?: WrittenRange };
  /** The problem fits on this mat: a row for each multiplier digit, a column for every digit. */
  readonly mat?: { readonly rows: number; readonly columns: number };
  /** How many problems to make, 1 to 100,000; left out: 10. */
  readonly count?: number;
  /** A whole number from 0 to 2^53 − 1; left out: 0. Same seed, same problems. */
  readonly seed?: number;
}

export const FACTORS = ['multiplicand', 'multiplier'] as const;
export type Factor = (typeof FACTORS)[number];

/** One condition; `at` is its path in the written specification, `written` what stands there. */
export type Clause = { readonly at: string; readonly written: unknown } & Condition;

export type Condition =
  | { readonly kind: 'stage'; readonly stage: Stage }
  | { readonly kind: 'digits'; readonly of: Factor; readonly range: Range }
  | { readonly kind: 'zeros'; readonly of: Factor; readonly zeros: ZeroCondition }
  | { readonly kind: 'decimals'; readonly of: Factor; readonly range: Range }
  | { readonly kind: 'exchanges'; readonly row: number | 'every'; readonly range: Range }
  | { readonly kind: 'largestPile'; readonly range: Range }
  | { readonly kind: 'allowed' | 'required' | 'avoided'; readonly facts: FactSet }
  | { readonly kind: 'productDigits'; readonly range: Range }
  | { readonly kind: 'mat'; readonly rows: number; readonly columns: number };

/** A specification that is well formed. Whether any problem satisfies it is another question. */
export interface Specification {
  readonly clauses: readonly Clause[];
  readonly count: number;
  readonly seed: number;
}
