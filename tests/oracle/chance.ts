/** Seeded chance for tests: the same seed, the same run, everywhere. */
export interface Chance {
  below(limit: number): number;
  maybe(probability: number): boolean;
  pick<T>(list: readonly T[]): T;
}

/** A small multiply-with-carry pair (Marsaglia), its state spread from the seed. */
export function chanceOf(seed: number): Chance {
  let high = (seed ^ 0x5bd1e995) >>> 0 || 1;
  let low = (Math.imul(seed, 2654435761) + 0x1234567) >>> 0 || 1;
  const draw = (): number => {
    high = (36969 * (high & 0xffff) + (high >>> 16)) >>> 0;
    low = (18000 * (low & 0xffff) + (low >>> 16)) >>> 0;
    return (((high << 16) + (low & 0xffff)) >>> 0) / 2 ** 32;
  };
  for (let warm = 0; warm < 8; warm += 1) draw();
  const below = (limit: number): number => Math.floor(draw() * limit);
  return {
    below,
    maybe: (probability) => draw() < probability,
    pick: (list) => list[below(list.length)]!,
  };
}
