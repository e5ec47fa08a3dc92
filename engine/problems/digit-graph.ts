import { DEAD, type DigitMachine } from './digit-machine.ts';

/**
 * The states that several machines reach together, reading digits from the units on, as plain tables.
 * States are numbered in the order of the fewest digits that reach them.
 */
export interface DigitGraph {
  /** `next[10 * state + digit]`, or DEAD. */
  readonly next: readonly number[];
  readonly accepts: readonly boolean[];
  /** `within[digits]`: how many states are reached by at most so many digits. */
  readonly within: readonly number[];
}

/** Only state 0, always content: any number will do. */
export const isUnconditional = (graph: DigitGraph): boolean =>
  graph.accepts.length === 1 && graph.accepts[0]! && graph.next.every((state) => state === 0);

/** @param depth digits of the longest number that will be asked for */
export function digitGraph(machines: readonly DigitMachine[], depth: number): DigitGraph {
  const next: number[] = [];
  const accepts: boolean[] = [];
  const within: number[] = [];
  const states: number[][] = [];
  const known = new Map<number, number>();
  const intern = (state: number[]): number => {
    const name = machines.reduce((sum, { radix }, index) => sum * radix + state[index]!, 0);
    const found = known.get(name);
    if (found !== undefined) return found;
    known.set(name, states.length);
    states.push(state);
    accepts.push(machines.every((machine, index) => machine.accepts(state[index]!)));
    return states.length - 1;
  };
  intern(machines.map(({ start }) => start));
  for (let digits = 0, from = 0; digits <= depth; digits++) {
    const to = states.length;
    within.push(to);
    for (let index = from; index < to; index++) {
      for (let digit = 0; digit < 10; digit++) {
        const state = digits < depth ? stepAll(machines, states[index]!, digit) : null;
        next.push(state ? intern(state) : DEAD);
      }
    }
    from = to;
  }
  return { next, accepts, within };
}

function stepAll(
  machines: readonly DigitMachine[],
  state: readonly number[],
  digit: number,
): number[] | null {
  const next: number[] = [];
  for (let index = 0; index < machines.length; index++) {
    const stepped = machines[index]!.step(state[index]!, digit);
    if (stepped === DEAD) return null;
    next.push(stepped);
  }
  return next;
}
