/** Whole numbers from `from` to `to`, both included. */
export interface Range {
  readonly from: number;
  readonly to: number;
}

export const within = (value: number, range: Range): boolean =>
  value >= range.from && value <= range.to;

export const overlap = (one: Range, other: Range): Range => ({
  from: Math.max(one.from, other.from),
  to: Math.min(one.to, other.to),
});

export const numbersIn = ({ from, to }: Range): number[] =>
  Array.from({ length: Math.max(0, to - from + 1) }, (_, index) => from + index);
