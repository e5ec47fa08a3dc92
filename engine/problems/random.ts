/** Draws whole numbers uniformly. Same seed, same draws, on every machine. */
export interface Draws {
  /** A number from 0 to `bound` − 1; `bound` from 1 to 2^53 − 1. */
  below(bound: number): number;
}

/**
 * xoshiro128** (Blackman and Vigna, "Scrambled linear pseudorandom number generators", ACM TOMS 47
 * (2021)), its state filled from the seed by splitmix32, so that neighbouring seeds share nothing.
 */
export function drawsFrom(seed: number): Draws {
  const next = xoshiro(fill(seed));
  return { below: (bound) => unbiased(bound, next) };
}

const TWO_32 = 2 ** 32;
const TWO_53 = 2 ** 53;

function fill(seed: number): Uint32Array {
  const state = new Uint32Array(4);
  let counter = ((seed % TWO_32) | 0) ^ Math.imul(Math.floor(seed / TWO_32), 0x85ebca6b);
  for (let index = 0; index < 4; index++) {
    counter = (counter + 0x9e3779b9) | 0;
    let mixed = Math.imul(counter ^ (counter >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    state[index] = mixed ^ (mixed >>> 15);
  }
  return state;
}

const rotate = (word: number, by: number): number => (word << by) | (word >>> (32 - by));

function xoshiro(state: Uint32Array): () => number {
  return () => {
    const [a, b, c, d] = state as unknown as [number, number, number, number];
    const result = Math.imul(rotate(Math.imul(b, 5), 7), 9) >>> 0;
    const [third, fourth] = [c ^ a, d ^ b];
    state[1] = b ^ third;
    state[0] = a ^ fourth;
    state[2] = third ^ (b << 9);
    state[3] = rotate(fourth, 11);
    return result;
  };
}

/** Rejects the tail that would favour the small numbers: at most every second draw, on average. */
function unbiased(bound: number, next: () => number): number {
  const limit = TWO_53 - (TWO_53 % bound);
  for (;;) {
    const draw = (next() & 0x1fffff) * TWO_32 + next();
    if (draw < limit) return draw % bound;
  }
}

/** `count` different numbers below `bound`, every ordered choice equally likely. */
export function distinctBelow(bound: number, count: number, draws: Draws): number[] {
  const moved = new Map<number, number>();
  const chosen: number[] = [];
  for (let index = 0; index < count; index++) {
    const other = index + draws.below(bound - index);
    chosen.push(moved.get(other) ?? other);
    moved.set(other, moved.get(index) ?? index);
  }
  return chosen;
}
