import type { Problem } from '../../problem.ts';
import type { Stage } from '../../vocabulary.ts';
import { parseProblem } from '../../wire.ts';
import type { Variant } from '../variants.ts';
import { doneAlike, type Outcomes, outcomesOf } from './outcomes.ts';

/** Two variants, by index; −1: the right way. */
type Pair = readonly [number, number];

/** What one problem of the set does for it. */
export interface Parting {
  /** How many pairs it parts; those that no other of the set parts. */
  readonly parts: number;
  readonly alone: readonly Pair[];
}

export interface Separating {
  /** Indexes into the pool: no smaller set of its problems parts as much. */
  readonly chosen: readonly number[];
  /** By chosen problem: the number of each variant's outcome, 0 as the right way has it. */
  readonly table: readonly Outcomes[];
  /** By chosen problem. */
  readonly parting: readonly Parting[];
  /** What no problem of the pool tells apart. */
  readonly together: readonly Pair[];
}

/**
 * The fewest problems of a pool in which any two variants, and each and the right way, are done
 * differently in at least one: sets of one, then of two and so on are gone through until one will do.
 */
export function separatingSet(pool: readonly Problem[], variants: readonly Variant[]): Separating {
  const outcomes = pool.map((problem) => outcomesOf(problem, variants));
  const pairs = allPairs(variants.length);
  const parted = pairs.filter((pair) => outcomes.some((own) => isParted(own, pair)));
  let chosen: number[] | null = null;
  for (let size = 0; chosen === null; size += 1) chosen = setOf(size, outcomes, parted);
  const table = chosen.map((index) => outcomes[index]!);
  return {
    chosen,
    table,
    parting: table.map((own, at) => partingOf(own, table.toSpliced(at, 1), pairs)),
    together: pairs.filter((pair) => !outcomes.some((own) => isParted(own, pair))),
  };
}

function partingOf(own: Outcomes, others: readonly Outcomes[], pairs: readonly Pair[]): Parting {
  const mine = pairs.filter((pair) => isParted(own, pair));
  const alone = mine.filter((pair) => !others.some((other) => isParted(other, pair)));
  return { parts: mine.length, alone };
}

/** So many problems that part all of the pairs; null: there are none. The pair that fewest part is met first. */
function setOf(
  size: number,
  outcomes: readonly Outcomes[],
  pairs: readonly Pair[],
): number[] | null {
  if (pairs.length === 0) return [];
  if (size === 0) return null;
  for (const index of partersOfHardest(outcomes, pairs)) {
    const left = pairs.filter((pair) => !isParted(outcomes[index]!, pair));
    const others = setOf(size - 1, outcomes, left);
    if (others !== null) return [index, ...others];
  }
  return null;
}

function partersOfHardest(outcomes: readonly Outcomes[], pairs: readonly Pair[]): number[] {
  let fewest: number[] | null = null;
  for (const pair of pairs) {
    const parters = [...outcomes.keys()].filter((index) => isParted(outcomes[index]!, pair));
    if (fewest === null || parters.length < fewest.length) fewest = parters;
  }
  return fewest!;
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
