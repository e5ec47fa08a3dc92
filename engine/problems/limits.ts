import { MAT_LIMITS } from '../mat/geometry.ts';
import type { Range } from './range.ts';

/** The largest mat, 6 rows by 13 columns: without a mat of its own, a specification means this one. */
export const LARGEST_MAT = {
  rows: MAT_LIMITS.rows.most,
  columns: MAT_LIMITS.columns.most,
} as const;

/** Digits that may be laid along the bottom and up the right edge of the largest mat. */
export const MULTIPLICAND_DIGITS: Range = { from: 1, to: 12 };
export const MULTIPLIER_DIGITS: Range = { from: 1, to: 6 };
export const PRODUCT_DIGITS: Range = { from: 1, to: 13 };

/** A row of twelve squares exchanges at most twelve times. */
export const EXCHANGES: Range = { from: 0, to: 12 };

/** 9 × 9 beads and the 8 that the square to the right can at most send. */
export const LARGEST_PILE: Range = { from: 1, to: 89 };

/** With at most eight places after each point every count of problems stays below 2^53. */
export const DECIMALS: Range = { from: 0, to: 8 };

/** Conditions that tie the digits of both numbers together are counted up to this size. */
export const COUNTABLE = { multiplicand: 6, multiplier: 3 } as const;

export const MOST_PROBLEMS = 100_000;
export const MOST_REQUIRED_FACTS = 20;
export const MOST_LISTED_FACTS = 54;
