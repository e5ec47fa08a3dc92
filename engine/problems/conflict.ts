import { type Candidate, satisfies } from './candidate.ts';
import { isCountable } from './constraints.ts';
import type { Clause } from './specification.ts';
import { witnessOf } from './witness.ts';

/**
 * A smallest set of clauses that no problem satisfies together; `clauses` as a whole must have none.
 *
 * Whatever problem one looks at violates at least one clause of every impossible set. So each problem
 * seen yields a set of clauses (those it violates) that an impossible set must hit. A smallest set that
 * hits all of them is tried: if a problem satisfies it, that problem yields a new set to be hit; if none
 * does, no smaller impossible set exists. (Ignatiev, Previti, Liffiton, Marques-Silva: "Smallest MUS
 * extraction with minimal hitting set dualization", CP 2015.)
 */
export function smallestConflict(clauses: readonly Clause[]): Clause[] {
  const toHit: number[][] = [];
  for (;;) {
    const tried = smallestHitting(toHit);
    const seen = witnessOf(tried.map((index) => clauses[index]!));
    if (seen === null) return tried.map((index) => clauses[index]!);
    toHit.push(violated(clauses, pleasingMore(clauses, seen)));
  }
}

const violated = (clauses: readonly Clause[], candidate: Candidate): number[] =>
  clauses.flatMap((clause, index) => (satisfies(candidate, clause) ? [] : [index]));

/**
 * A problem that satisfies all that this one does and more clauses, as far as a small one can: the
 * fewer it violates, the sooner the smallest conflict is found, but any will do.
 */
function pleasingMore(clauses: readonly Clause[], seen: Candidate): Candidate {
  let best = seen;
  for (const clause of clauses) {
    if (satisfies(best, clause)) continue;
    const kept = clauses.filter((other) => satisfies(best, other));
    best = witnessOf([...kept, clause], isCountable) ?? best;
  }
  return best;
}

/** Indices in ascending order; searched by size, so that the first found is a smallest. */
function smallestHitting(sets: readonly number[][]): number[] {
  for (let size = 0; ; size++) {
    const found = hittingOf(size, sets, []);
    if (found) return found.sort((a, b) => a - b);
  }
}

function hittingOf(size: number, sets: readonly number[][], chosen: number[]): number[] | null {
  const missed = sets.find((set) => !set.some((index) => chosen.includes(index)));
  if (missed === undefined) return [...chosen];
  if (chosen.length === size) return null;
  for (const index of missed) {
    const found = hittingOf(size, sets, [...chosen, index]);
    if (found) return found;
  }
  return null;
}
