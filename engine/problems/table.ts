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
 * All numbers of `length` digits that the graph accepts and the bound lets through. A digit decides
 * more than all digits to its right; so, read from the units on, it is enough to keep one bit: whether
 * what was read is at least the threshold's digits so far.
 */
export function tabulate(graph: DigitGraph, length: number, bound: Bound | null): Table {
  if (isUnconditional(graph)) return interval(length, bound);
  if (bound && bound.threshold >= 10 ** length) {
    return bound.side === 'below' ? tabulate(graph, length, null) : EMPTY;
  }
  const ways = waysOn(graph, length, bound);
  return {
    count: ways[length]![bound ? 1 : 0]!,
    at: (rank) => numberAt(graph, length, bound, ways, rank),
  };
}

const EMPTY: Table = { count: 0, at: () => Number.NaN };

function interval(length: number, bound: Bound | null): Table {
  const [first, end] = [10 ** (length - 1), 10 ** length];
  const from = bound?.side === 'atLeast' ? Math.max(first, bound.threshold) : first;
  const to = bound?.side === 'below' ? Math.min(end, bound.threshold) : end;
  return { count: Math.max(0, to - from), at: (rank) => from + rank };
}

/**
 * `ways[left][slot]`: how many fillings of the `left` highest digits are accepted. A slot is a state,
 * or with a bound two of them: 2 × state + (1 if what was read is at least the threshold's).
 */
function waysOn(graph: DigitGraph, length: number, bound: Bound | null): Float64Array[] {
  const width = bound ? 2 : 1;
  const limit = bound ? digitsOf(bound.threshold) : [];
  const ways = [lastWays(graph, length, bound)];
  for (let left = 1; left <= length; left++) {
    const read = length - left;
    const [states, before] = [graph.within[read]!, ways[left - 1]!];
    const now = new Float64Array(states * width);
    for (let slot = 0; slot < now.length; slot++) {
      let sum = 0;
      // No number starts with a zero.
      for (let digit = left === 1 ? 1 : 0; digit < 10; digit++) {
        const next = nextSlot(graph, width, slot, digit, limit[read] ?? 0);
        if (next >= 0) sum += before[next]!;
      }
      now[slot] = sum;
    }
    ways.push(now);
  }
  return ways;
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
  width: number,
  slot: number,
  digit: number,
  limit: number,
): number {
  if (width === 1) return graph.next[10 * slot + digit]!;
  const next = graph.next[10 * (slot >> 1) + digit]!;
  if (next < 0) return next;
  return 2 * next + (digit > limit ? 1 : digit < limit ? 0 : slot & 1);
}

function numberAt(
  graph: DigitGraph,
  length: number,
  bound: Bound | null,
  ways: readonly Float64Array[],
  rank: number,
): number {
  const width = bound ? 2 : 1;
  const limit = bound ? digitsOf(bound.threshold) : [];
  let [slot, rest, number] = [width - 1, rank, 0];
  for (let left = length; left > 0; left--) {
    const read = length - left;
    for (let digit = left === 1 ? 1 : 0; digit < 10; digit++) {
      const next = nextSlot(graph, width, slot, digit, limit[read] ?? 0);
      const count = next < 0 ? 0 : ways[left - 1]![next]!;
      if (rest < count) {
        [slot, number] = [next, number + digit * 10 ** read];
        break;
      }
      rest -= count;
    }
  }
  return number;
}
