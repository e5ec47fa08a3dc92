/** What the picked bars would make, as they would lie in a mould for ten beads. */
export interface Pick {
  readonly bars: readonly number[];
  readonly sum: number;
  /** Beads of the last picked bar that still find room; null when no bar has to be cut, or one cut is not enough. */
  readonly split: { readonly kind: number; readonly take: number } | null;
  readonly makesTen: boolean;
}

export const pickOf = (bars: readonly number[]): Pick => {
  const sum = bars.reduce((total, kind) => total + kind, 0);
  const last = bars.at(-1) ?? 0;
  const room = 10 - (sum - last);
  const split = sum > 10 && room > 0 && room < last ? { kind: last, take: room } : null;
  return { bars, sum, split, makesTen: sum === 10 || split !== null };
};
