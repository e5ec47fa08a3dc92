import { type Beliefs, believed } from '../pupils/beliefs.ts';
import type { DoneWork } from './done.ts';
import type { ErrorPattern } from './pattern.ts';

/** One way to hold a pattern: a family has one for each parameter. */
export interface Variant {
  readonly pattern: ErrorPattern;
  readonly beliefs: Beliefs;
}

/** Fewer steps, or all in one problem, may be chance (a rule must recur: sources, C.4). */
export const LEAST_STEPS = 3;
export const LEAST_PROBLEMS = 2;

/** How often each fact comes up in a work, by `10 a + b` with digits a and b. */
export type Facts = ReadonlyMap<number, number>;

export function factsIn({ problem }: DoneWork): Facts {
  const facts = new Map<number, number>();
  for (const a of problem.multiplicand.digits)
    for (const b of problem.multiplier.digits) {
      facts.set(10 * a + b, (facts.get(10 * a + b) ?? 0) + 1);
    }
  return facts;
}

const FACTS = Array.from({ length: 100 }, (_, at) => [Math.floor(at / 10), at % 10] as const);
const wrongFacts = new WeakMap<Beliefs, readonly number[]>();

/** The facts that are believed otherwise. */
function wrongFactsOf(beliefs: Beliefs): readonly number[] {
  const known = wrongFacts.get(beliefs);
  if (known !== undefined) return known;
  const wrong = FACTS.filter(([a, b]) => believed(beliefs, 'fact', { a, b }, a * b) !== a * b);
  const keys = wrong.map(([a, b]) => 10 * a + b);
  wrongFacts.set(beliefs, keys);
  return keys;
}

function timesMet(beliefs: Beliefs, facts: Facts): number {
  return wrongFactsOf(beliefs).reduce((sum, fact) => sum + (facts.get(fact) ?? 0), 0);
}

/** A belief about facts alone bears on nothing where those facts do not come up. */
export function mayBear(beliefs: Beliefs, facts: Facts): boolean {
  const [first, ...more] = Object.keys(beliefs);
  return first !== 'fact' || more.length > 0 || timesMet(beliefs, facts) > 0;
}

/** The variants of the patterns that have a place at the works' stages; of families, those that could show. */
export function variantsFor(
  catalogue: readonly ErrorPattern[],
  works: readonly DoneWork[],
): readonly Variant[] {
  const stages = new Set(works.map(({ problem }) => problem.stage));
  const facts = works.map(factsIn);
  return catalogue
    .filter((pattern) => pattern.stages.some((stage) => stages.has(stage)))
    .flatMap((pattern) => {
      const all = Object.values(pattern.beliefs).map((beliefs) => ({ pattern, beliefs }));
      return all.length === 1 ? all : all.filter(({ beliefs }) => comesUp(beliefs, facts));
    });
}

function comesUp(beliefs: Beliefs, facts: readonly Facts[]): boolean {
  const met = facts.map((own) => timesMet(beliefs, own));
  const all = met.reduce((sum, count) => sum + count, 0);
  return all >= LEAST_STEPS && met.filter((count) => count > 0).length >= LEAST_PROBLEMS;
}
