import type { Candidate } from './candidate.ts';
import { type Constraints, constraintsOf, type Size } from './constraints.ts';
import type { DigitGraph } from './digit-graph.ts';
import { boundFor, multiplicandsFor } from './multiplicands.ts';
import { type MultiplierGroup, multiplierGroups } from './multipliers.ts';
import type { Clause } from './specification.ts';
import { tabulate } from './table.ts';

/** Any two numbers of any size that satisfy all clauses, or null when there are none. */
export function witnessOf(clauses: readonly Clause[]): Candidate | null {
  const constraints = constraintsOf(clauses);
  const graphs = new Map<string, DigitGraph>();
  for (const length of lengthsOf(constraints)) {
    for (const group of multiplierGroups(constraints, length)) {
      const found = witnessIn(constraints, length, group, graphs);
      if (found) return found;
    }
  }
  return null;
}

const lengthsOf = ({ sizes }: Constraints): number[] =>
  [...new Set(sizes.map(({ multiplier }) => multiplier))].sort((a, b) => a - b);

function witnessIn(
  constraints: Constraints,
  length: number,
  group: MultiplierGroup,
  graphs: Map<string, DigitGraph>,
): Candidate | null {
  const sizes = constraints.sizes.filter(({ multiplier }) => multiplier === length);
  const graph = graphs.get(group.name) ?? multiplicandsFor(constraints, group, longestOf(sizes));
  graphs.set(group.name, graph);
  for (const size of sizes) {
    for (const multiplier of extremes(group)) {
      const table = tabulate(graph, size.multiplicand, boundFor(constraints, size, multiplier));
      if (table.count > 0) return { multiplicand: table.at(0), multiplier };
    }
  }
  return null;
}

const longestOf = (sizes: readonly Size[]): number =>
  Math.max(...sizes.map(({ multiplicand }) => multiplicand));

/** If any multiplier of a group gives a product long, or short, enough, the largest or smallest does. */
const extremes = ({ members }: MultiplierGroup): number[] => [
  ...new Set([members[0]!, members[members.length - 1]!]),
];
