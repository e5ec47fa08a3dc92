export type Interval = readonly [from: number, to: number];

/** The 0.975 quantile of the normal distribution. */
const Z = 1.959963984540054;

/** 95 % interval of a share, after Wilson (1927): it holds near 0 and 1 too. No tries: [0, 1]. */
export function intervalOf(successes: number, tries: number): Interval {
  if (tries === 0) return [0, 1];
  const rate = successes / tries;
  const spread = Z * Math.sqrt((rate * (1 - rate)) / tries + (Z * Z) / (4 * tries * tries));
  const [centre, scale] = [rate + (Z * Z) / (2 * tries), 1 + (Z * Z) / tries];
  const from = successes === 0 ? 0 : (centre - spread) / scale;
  const to = successes === tries ? 1 : (centre + spread) / scale;
  return [from, to];
}

/** 95 % interval of a mean, by the normal law of large samples. Fewer than two: null. */
export function intervalOfMean(sample: readonly number[]): Interval | null {
  const { length } = sample;
  if (length < 2) return null;
  const mean = sample.reduce((sum, each) => sum + each, 0) / length;
  const spread = sample.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (length - 1);
  const half = Z * Math.sqrt(spread / length);
  return [mean - half, mean + half];
}
