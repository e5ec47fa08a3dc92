/** A square of the mat, counted from 0 at the lower right corner. */
export type Square = readonly [row: number, column: number];

/** Rows 1..6, columns 2..13; `origin` is the place of the lower right square. */
export interface Mat {
  readonly rows: number;
  readonly columns: number;
  readonly origin: number;
}

export const MAT_LIMITS = { rows: { least: 1, most: 6 }, columns: { least: 2, most: 13 } } as const;
/** Common practice, no source. */
const USUAL = { rows: 4, columns: 9 } as const;

export interface Size {
  readonly rows: number;
  readonly columns: number;
}

export function isSameSquare(one: Square, other: Square): boolean {
  return one[0] === other[0] && one[1] === other[1];
}

export function placeOf(mat: Mat, square: Square): number {
  return mat.origin + square[0] + square[1];
}

export function onMat(mat: Size, square: Square): boolean {
  return square[0] >= 0 && square[0] < mat.rows && square[1] >= 0 && square[1] < mat.columns;
}

/** The size that m × n digits need: a row a multiplier digit, and no product longer than the bottom row. */
export function sizeNeeded(multiplicandDigits: number, multiplierDigits: number): Size {
  return {
    rows: Math.max(multiplierDigits, MAT_LIMITS.rows.least),
    columns: Math.max(multiplicandDigits + multiplierDigits, MAT_LIMITS.columns.least),
  };
}

export function fits(size: Size, needed: Size): boolean {
  return size.rows >= needed.rows && size.columns >= needed.columns;
}

/** 4 × 9 where it fits, else the smallest that does; null where no mat does. */
export function usualSize(needed: Size): Size | null {
  if (fits(USUAL, needed)) return USUAL;
  const most = { rows: MAT_LIMITS.rows.most, columns: MAT_LIMITS.columns.most };
  return fits(most, needed) ? needed : null;
}

/** Hierarchy 0 units, 1 tens, 2 hundreds; families mirror round the units (common practice, no source). */
export function placeName(place: number): { hierarchy: 0 | 1 | 2; family: number } {
  const distance = Math.abs(place);
  const family = Math.floor(distance / 3);
  return {
    hierarchy: (distance % 3) as 0 | 1 | 2,
    family: place < 0 && family > 0 ? -family : family,
  };
}
