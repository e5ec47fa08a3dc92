/** The chance of at least `count` out of `of`, each with chance `rate` (0 < rate < 1). */
export function atLeast(count: number, of: number, rate: number): number {
  let chance = (1 - rate) ** of;
  let below = 0;
  for (let k = 0; k < count; k += 1) {
    below += chance;
    chance *= ((of - k) / (k + 1)) * (rate / (1 - rate));
  }
  return Math.max(0, 1 - below);
}
