import type { Tally } from './likelihood.ts';
import type { ListedVariant } from './variants.ts';

/** A variant that has something otherwise than the right way, and what the tally has more if it is held. */
export interface Gain {
  readonly variant: ListedVariant;
  readonly gain: Tally;
}

/** What is otherwise than the right way has it: a class's works are counted over it. */
export type Effect = readonly Gain[];

/** How a single decision stands to what a variant has due: the right way has the same due, or else. */
export type Standing = 'same' | 'held' | 'lapsed' | 'other';

/**
 * Single decisions have few different effects, and a class takes thousands of them: an effect is found
 * by how each variant stands to the decision, fork by fork, and is made once.
 */
export interface Fork {
  readonly next: Partial<Record<Standing, Fork>>;
  effect: Effect | null;
}

export function newFork(): Fork {
  return { next: {}, effect: null };
}

export function taken({ next }: Fork, standing: Standing): Fork {
  next[standing] ??= newFork();
  return next[standing];
}
