import type { Candidate } from './candidate.ts';
import type { Constraints, Size } from './constraints.ts';
import type { DigitGraph } from './digit-graph.ts';
import { boundFor, multiplicandsFor } from './multiplicands.ts';
import { type MultiplierGroup, multiplierGroups } from './multipliers.ts';
import { type Table, tabulator } from './table.ts';

/** All candidates that satisfy the constraints, each with a rank from 0 to `count` − 1. */
export interface Population {
  readonly count: number;
  /** In the order of `ranks`; quickest when many of them are asked for together. */
  at(ranks: readonly number[]): Candidate[];
}

export function populationOf(constraints: Constraints): Population {
  const blocks = blocksOf(constraints);
  const ends = runningSums(blocks.map(({ count }) => count));
  return { count: ends.at(-1) ?? 0, at: (ranks) => candidatesAt(blocks, ends, ranks) };
}

/** Candidates of one size whose multipliers belong to one group. */
interface Block {
  readonly count: number;
  at(rank: number): Candidate;
}

function blocksOf(constraints: Constraints): Block[] {
  const lengths = [...new Set(constraints.sizes.map(({ multiplier }) => multiplier))];
  const graphs = new Map<number, DigitGraph>();
  const longest = Math.max(0, ...constraints.sizes.map(({ multiplicand }) => multiplicand));
  const graphFor = (group: MultiplierGroup): DigitGraph => {
    const graph = graphs.get(group.name) ?? multiplicandsFor(constraints, group, longest);
    graphs.set(group.name, graph);
    return graph;
  };
  return lengths.flatMap((length) => {
    const groups = multiplierGroups(constraints, length);
    const sizes = constraints.sizes.filter(({ multiplier }) => multiplier === length);
    return sizes.flatMap((size) =>
      groups.map((group) => blockOf(constraints, size, group, graphFor(group))),
    );
  });
}

function blockOf(
  constraints: Constraints,
  size: Size,
  group: MultiplierGroup,
  graph: DigitGraph,
): Block {
  const alike = boundFor(constraints, size, group.members[0]!) === null;
  return alike ? evenBlock(size, group, graph) : unevenBlock(constraints, size, group, graph);
}

/** Every multiplier goes with the same multiplicands. */
function evenBlock(size: Size, { members }: MultiplierGroup, graph: DigitGraph): Block {
  const table = tabulator(graph, size.multiplicand)(null);
  return {
    count: table.count * members.length,
    at: (rank) => ({
      multiplicand: table.at(rank % table.count),
      multiplier: members[Math.floor(rank / table.count)]!,
    }),
  };
}

/** The product's length lets each multiplier have its own multiplicands. */
function unevenBlock(
  constraints: Constraints,
  size: Size,
  { members }: MultiplierGroup,
  graph: DigitGraph,
): Block {
  const bounded = tabulator(graph, size.multiplicand);
  const tableOf = (multiplier: number): Table => bounded(boundFor(constraints, size, multiplier));
  const ascending = Float64Array.from(members).sort();
  const ends = runningSums(ascending.map((multiplier) => tableOf(multiplier).count));
  const tableAgain = rememberingLast(tableOf);
  return {
    count: ends.at(-1)!,
    at: (rank) => {
      const index = firstAbove(ends, rank);
      const multiplier = ascending[index]!;
      const multiplicand = tableAgain(multiplier).at(rank - (ends[index - 1] ?? 0));
      return { multiplicand, multiplier };
    },
  };
}

/** Tables are costly to keep and cheap to use in a row: only the last one is remembered. */
function rememberingLast(make: (key: number) => Table): (key: number) => Table {
  let last: { readonly key: number; readonly table: Table } | null = null;
  return (key) => {
    if (last?.key !== key) last = { key, table: make(key) };
    return last.table;
  };
}

function candidatesAt(
  blocks: readonly Block[],
  ends: Float64Array,
  ranks: readonly number[],
): Candidate[] {
  const candidates = new Array<Candidate>(ranks.length);
  const ascending = [...ranks.keys()].sort((a, b) => ranks[a]! - ranks[b]!);
  for (const index of ascending) {
    const rank = ranks[index]!;
    const block = firstAbove(ends, rank);
    candidates[index] = blocks[block]!.at(rank - (ends[block - 1] ?? 0));
  }
  return candidates;
}

function runningSums(counts: ArrayLike<number>): Float64Array {
  let sum = 0;
  return Float64Array.from(counts, (count) => {
    sum += count;
    return sum;
  });
}

/** Index of the first end above the rank, by halving. */
function firstAbove(ends: Float64Array, rank: number): number {
  let [low, high] = [0, ends.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ends[middle]! > rank) high = middle;
    else low = middle + 1;
  }
  return low;
}
