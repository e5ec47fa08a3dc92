import { type DigitGraph, isUnconditional } from './digit-graph.ts';
import { digitsOf } from './digits.ts';

/** Numbers of one length, counted, and each to be had by its rank from 0 to `count` − 1. */
export interface Table {
  readonly count: number;
  at(rank: number): number;
}

/** Only numbers of at least, or below, `threshold`. */
export interface Bound {
  readonly threshold: number;
  readonly side: 'atLeast' | 'below';
}

/**
 * All numbers of `length` digits that the graph accepts and a bound lets through. A digit decides more
 * than all digits to its right; so, read from the units on, it is enough to keep one bit: whether what
 * was read is at least the threshold's digits so far.
 *
 * Asking for neighbouring thresholds one after the other is quick: what was found for the highest
 * digits is used again for as long as these stay the same.
 */
export function tabulator(graph: DigitGraph, length: number): (bound: Bound | null) => Table {
  if (isUnconditional(graph)) return (bound) => interval(length, bound);
  let last: Ways = NOTHING_FOUND;
  return (bound) => {
    const high = bound !== null && bound.threshold >= 10 ** length;
    if (high && bound.side === 'atLeast') return EMPTY;
    last = waysOn(graph, length, high ? null : bound, last);
    return tableOf(graph, length, last);
  };
}

/**
 * `counts[left][slot]`: how many fillings of the `left` highest digits are accepted. A slot is a state,
 * or with a bound two of them: 2 × state + (1 if what was read is at least the threshold's). `limit`:
 * the threshold's digits, units first.
 */
interface Ways {
  readonly bound: Bound | null;
  readonly limit: readonly number[];
  readonly counts: readonly Float64Array[];
}

const NOTHING_FOUND: Ways = { bound: null, limit: [], counts: [] };

function tableOf(graph: DigitGraph, length: number, ways: Ways): Table {
  return {
    count: ways.counts[length]![ways.bound ? 1 : 0]!,
    at: (rank) => numberAt(graph, length, ways, rank),
  };
}

const EMPTY: Table = { count: 0, at: () => Number.NaN };

function interval(length: number, bound: Bound | null): Table {
  const [first, end] = [10 ** (length - 1), 10 ** length];
  const from = bound?.side === 'atLeast' ? Math.max(first, bound.threshold) : first;
  const to = bound?.side === 'below' ? Math.min(end, bound.threshold) : end;
  return { count: Math.max(0, to - from), at: (rank) => from + rank };
}

function waysOn(graph: DigitGraph, length: number, bound: Bound | null, last: Ways): Ways {
  const limit = bound ? digitsOf(bound.threshold) : [];
  const known = last.bound?.side === bound?.side ? sameHighest(limit, last.limit) : -1;
  const counts = last.counts.slice(0, known + 1);
  if (counts.length === 0) counts.push(lastWays(graph, length, bound));
  for (let left = counts.length; left <= length; left++) {
    const read = length - left;
    const slots = graph.within[read]! * (bound ? 2 : 1);
    counts.push(waysBefore(graph, counts[left - 1]!, slots, limit[read], left === 1));
  }
  return { bound, limit, counts };
}

/** How many of the highest digits two thresholds of the same length share. */
function sameHighest(one: readonly number[], other: readonly number[]): number {
  let same = 0;
  while (same < one.length && one.at(-1 - same) === other.at(-1 - same)) same += 1;
  return same;
}

function waysBefore(
  graph: DigitGraph,
  after: Float64Array,
  slots: number,
  limit: number | undefined,
  highest: boolean,
): Float64Array {
  const counts = new Float64Array(slots);
  for (let slot = 0; slot < slots; slot++) {
    let sum = 0;
    // No number starts with a zero.
    for (let digit = highest ? 1 : 0; digit < 10; digit++) {
      const next = nextSlot(graph, slot, digit, limit);
      if (next >= 0) sum += after[next]!;
    }
    counts[slot] = sum;
  }
  return counts;
}

function lastWays(graph: DigitGraph, length: number, bound: Bound | null): Float64Array {
  const states = graph.within[length]!;
  if (!bound) return Float64Array.from({ length: states }, (_, s) => (graph.accepts[s] ? 1 : 0));
  const wanted = bound.side === 'atLeast' ? 1 : 0;
  return Float64Array.from({ length: 2 * states }, (_, slot) =>
    graph.accepts[slot >> 1] && (slot & 1) === wanted ? 1 : 0,
  );
}

function nextSlot(
  graph: DigitGraph,
  slot: number,
  digit: number,
  limit: number | undefined,
): number {
  if (limit === undefined) return graph.next[10 * slot + digit]!;
  const next = graph.next[10 * (slot >> 1) + digit]!;
  if (next < 0) return next;
  return 2 * next + (digit > limit ? 1 : digit < limit ? 0 : slot & 1);
}

function numberAt(graph: DigitGraph, length: number, ways: Ways, rank: number): number {
  let [slot, rest, number] = [ways.bound ? 1 : 0, rank, 0];
  for (let left = length; left > 0; left--) {
    const read = length - left;
    for (let digit = left === 1 ? 1 : 0; digit < 10; digit++) {
      const next = nextSlot(graph, slot, digit, ways.limit[read]);
      const count = next < 0 ? 0 : ways.counts[left - 1]![next]!;
      if (rest < count) {
        [slot, number] = [next, number + digit * 10 ** read];
        break;
      }
      rest -= count;
    }
  }
  return number;
}
