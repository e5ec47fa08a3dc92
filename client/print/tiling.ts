/** A run of neighbours that share a sheet: `from` to before `to`. */
export interface Run {
  readonly from: number;
  readonly to: number;
}

/** Cuts lengths, in their order, into as few runs as fit the room; nothing is ever cut through. */
export const runsOf = (lengths: readonly number[], room: number): Run[] => {
  const runs: Run[] = [];
  let from = 0;
  let sum = 0;
  for (const [index, length] of lengths.entries()) {
    if (index > from && sum + length > room + 1e-6) {
      runs.push({ from, to: index });
      from = index;
      sum = 0;
    }
    sum += length;
  }
  return [...runs, { from, to: lengths.length }];
};

export const lengthOf = (lengths: readonly number[], { from, to }: Run): number =>
  lengths.slice(from, to).reduce((sum, length) => sum + length, 0);

/** A, B, …, Z, AA, AB, …: names for the seams between sheets. */
export const letterOf = (index: number): string => {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : letterOf(Math.floor(index / 26) - 1) + last;
};
