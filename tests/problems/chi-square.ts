/**
 * Chance of a chi-square at least this large when all is as assumed, by the cube-root normal
 * approximation (Wilson and Hilferty 1931), good to three digits from some thirty degrees of freedom.
 */
export function chanceOfChiSquare(chiSquare: number, freedom: number): number {
  const spread = 2 / (9 * freedom);
  return upperTail((Math.cbrt(chiSquare / freedom) - (1 - spread)) / Math.sqrt(spread));
}

/** Upper tail of the standard normal; Abramowitz and Stegun 26.2.17, error below 7.5e-8. */
function upperTail(z: number): number {
  if (z < 0) return 1 - upperTail(-z);
  const t = 1 / (1 + 0.2316419 * z);
  const weights = [0.31938153, -0.356563782, 1.781477937, -1.821255978, 1.330274429];
  const sum = weights.reduceRight((inner, weight) => t * (weight + inner), 0);
  return (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) * sum;
}

/**
 * How often each of `size` members came up in `draws` draws of `each` different members, against equal
 * chances. Within one draw members exclude each other, hence the variance and its factor.
 */
export function uniformityOfDraws(
  counts: readonly number[],
  draws: number,
  each: number,
): { chance: number } {
  const size = counts.length;
  const share = each / size;
  const variance = draws * share * (1 - share);
  const squares = counts.reduce((sum, count) => sum + (count - draws * share) ** 2, 0);
  return { chance: chanceOfChiSquare((squares / variance) * ((size - 1) / size), size - 1) };
}
