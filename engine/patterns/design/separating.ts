import type { Problem } from '../../problem.ts';
import type { Stage } from '../../vocabulary.ts';
import { parseProblem } from '../../wire.ts';
import type { Variant } from '../variants.ts';
import { doneAlike, type Outcomes, outcomesOf } from './outcomes.ts';

/** Two variants, by index; −1: the right way. */
type Pair = readonly [number, number];

export interface Separating {
  /** Indexes into the pool; the smallest set that was found. */
  readonly chosen: readonly number[];
  /** By chosen problem: the number of each variant's outcome, 0 as the right way has it. */
  readonly table: readonly Outcomes[];
  /** What no problem of the pool tells apart. */
  readonly together: readonly Pair[];
}

/**
 * Problems out of a pool in which any two variants, and each and the right way, are done differently
 * in at least one: greedily those that part most, then without what is not needed, from every
 * beginning; the smallest set so found.
 */
export function separatingSet(pool: readonly Problem[], variants: readonly Variant[]): Separating {
  const outcomes = pool.map((problem) => outcomesOf(problem, variants));
  const pairs = allPairs(variants.length);
  const parts = outcomes.map((own) => pairs.map((pair) => isParted(own, pair)));
  const open = pairs.map((_, at) => parts.some((own) => own[at]));
  const together = pairs.filter((_, at) => !open[at]);
  let chosen = pool.map((_, index) => index);
  for (const first of pool.keys()) {
    const found = withoutNeedless(parts, open, greedily(parts, open, first));
    if (found.length < chosen.length) chosen = found;
  }
  return { chosen, table: chosen.map((index) => outcomes[index]!), together };
}

function allPairs(count: number): Pair[] {
  const pairs: Pair[] = [];
  for (let one = -1; one < count; one += 1)
    for (let other = one + 1; other < count; other += 1) pairs.push([one, other]);
  return pairs;
}

function isParted(outcomes: Outcomes, [one, other]: Pair): boolean {
  return (outcomes[one] ?? 0) !== outcomes[other];
}

function greedily(parts: readonly boolean[][], open: readonly boolean[], first: number): number[] {
  const chosen = [first];
  let left = open.map((is, at) => is && !parts[first]![at]);
  while (left.includes(true)) {
    const gains = parts.map((own) => own.filter((is, at) => is && left[at]).length);
    const next = gains.indexOf(Math.max(...gains));
    chosen.push(next);
    left = left.map((is, at) => is && !parts[next]![at]);
  }
  return chosen;
}

function withoutNeedless(
  parts: readonly boolean[][],
  open: readonly boolean[],
  chosen: readonly number[],
): number[] {
  let kept = [...chosen];
  for (const index of chosen) {
    const others = kept.filter((each) => each !== index);
    if (open.every((is, at) => !is || others.some((each) => parts[each]![at]))) kept = others;
  }
  return kept;
}

/** Part of the pairs that a set of problems tells apart, 0..1. */
export function shareParted(set: readonly Problem[], variants: readonly Variant[]): number {
  const outcomes = set.map((problem) => outcomesOf(problem, variants));
  const pairs = allPairs(variants.length);
  return pairs.filter((pair) => outcomes.some((own) => isParted(own, pair))).length / pairs.length;
}

/** The proof that nothing tells two apart: done alike in every problem of three by two digits. */
export function alwaysAlike(stage: Stage, one: Variant, other: Variant): boolean {
  for (let multiplicand = 100; multiplicand < 1000; multiplicand += 1)
    for (let multiplier = 10; multiplier < 100; multiplier += 1) {
      const written = { multiplicand: `${multiplicand}`, multiplier: `${multiplier}` };
      const problem = parseProblem({ stage, ...written });
      if (problem.ok && !doneAlike(problem.value, one, other)) return false;
    }
  return true;
}
