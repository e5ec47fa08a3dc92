import type { Problem } from '../../problem.ts';
import type { Variant } from '../reading.ts';
import { showingOf } from './showing.ts';

/** More steps than this say little more about a pattern. */
const PLENTY = 12;

/**
 * Problems out of a pool with which every pattern shows in as many steps as may be: greedily by the
 * worst served patterns, then by exchanging single problems while that helps.
 */
export function evidenceSet(
  pool: readonly Problem[],
  variants: readonly Variant[],
  size: number,
): readonly Problem[] {
  const shown = pool.map((problem) =>
    variants.map((variant) => showingOf(problem, variant).steps.length),
  );
  const chosen: number[] = [];
  while (chosen.length < Math.min(size, pool.length)) chosen.push(bestBeside(shown, chosen));
  for (let round = 0; round < 2; round += 1)
    for (const index of chosen.keys()) {
      const others = chosen.filter((_, at) => at !== index);
      chosen[index] = bestBeside(shown, others);
    }
  return chosen.map((index) => pool[index]!);
}

function bestBeside(shown: readonly (readonly number[])[], chosen: readonly number[]): number {
  const sums = shown[0]!.map((_, at) => chosen.reduce((sum, index) => sum + shown[index]![at]!, 0));
  let best = 0;
  let most = Number.NEGATIVE_INFINITY;
  for (const [index, steps] of shown.entries()) {
    if (chosen.includes(index)) continue;
    const worth = steps.reduce((sum, count, at) => sum + worthOf(sums[at]! + count), 0);
    if (worth <= most) continue;
    most = worth;
    best = index;
  }
  return best;
}

/** The first steps count most: all patterns should have some before any has many. */
function worthOf(steps: number): number {
  const counted = Math.min(steps, PLENTY);
  return 1 - 0.7 ** counted;
}
