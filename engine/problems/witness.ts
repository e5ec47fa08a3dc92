import type { Candidate } from './candidate.ts';
import { type Constraints, constraintsOf, type Size } from './constraints.ts';
import type { DigitGraph } from './digit-graph.ts';
import { boundFor, multiplicandsFor } from './multiplicands.ts';
import { type MultiplierGroup, multiplierGroups } from './multipliers.ts';
import type { Clause } from './specification.ts';
import { tabulator } from './table.ts';

/**
 * Any two numbers that satisfy all clauses, or null when there are none of a size that `allows` lets
 * through; without it, none at all.
 */
export function witnessOf(
  clauses: readonly Clause[],
  allows: (size: Size) => boolean = () => true,
): Candidate | null {
  const every = constraintsOf(clauses);
  const constraints = { ...every, sizes: every.sizes.filter(allows) };
  const search: Search = { constraints, graphs: new Map(), searched: new Set() };
  for (const length of lengthsOf(constraints)) {
    for (const group of multiplierGroups(constraints, length)) {
      const found = witnessIn(search, length, group);
      if (found) return found;
    }
  }
  return null;
}

interface Search {
  readonly constraints: Constraints;
  readonly graphs: Map<number, DigitGraph>;
  /** Groups and lengths of multiplicands that were searched without a bound, in vain. */
  readonly searched: Set<string>;
}

const lengthsOf = ({ sizes }: Constraints): number[] =>
  [...new Set(sizes.map(({ multiplier }) => multiplier))].sort((a, b) => a - b);

function witnessIn(search: Search, length: number, group: MultiplierGroup): Candidate | null {
  const { constraints, graphs } = search;
  const sizes = constraints.sizes.filter(({ multiplier }) => multiplier === length);
  const graph = graphs.get(group.name) ?? multiplicandsFor(constraints, group, longestOf(sizes));
  graphs.set(group.name, graph);
  for (const size of sizes) {
    for (const multiplier of extremes(group)) {
      const found = smallestBeside(search, size, group, multiplier, graph);
      if (found !== null) return { multiplicand: found, multiplier };
    }
  }
  return null;
}

function smallestBeside(
  { constraints, searched }: Search,
  size: Size,
  group: MultiplierGroup,
  multiplier: number,
  graph: DigitGraph,
): number | null {
  const bound = boundFor(constraints, size, multiplier);
  const name = `${group.name}/${size.multiplicand}`;
  if (bound === null) {
    if (searched.has(name)) return null;
    searched.add(name);
  }
  const table = tabulator(graph, size.multiplicand)(bound);
  return table.count > 0 ? table.at(0) : null;
}

const longestOf = (sizes: readonly Size[]): number =>
  Math.max(...sizes.map(({ multiplicand }) => multiplicand));

/** If any multiplier of a group gives a product long, or short, enough, the largest or smallest does. */
const extremes = ({ members }: MultiplierGroup): number[] => [
  members.reduce((one, other) => Math.min(one, other)),
  members.reduce((one, other) => Math.max(one, other)),
];
