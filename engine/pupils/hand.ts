import type { Action } from '../mat/action.ts';
import { type Draws, drawsFrom } from '../problems/random.ts';

/** How a pupil works, right or wrong: the order, what is written down, whether help is asked for. */
export interface Habits {
  readonly rows: 'unitsFirst' | 'topFirst';
  readonly carries: 'noted' | 'inTheHead';
  readonly placeholders: 'written' | 'leftEmpty';
  /** Hints of level 1, one in so many actions; 0: never. They change nothing. */
  readonly asksOneIn: number;
}

export const USUAL_HABITS: Habits = {
  rows: 'unitsFirst',
  carries: 'noted',
  placeholders: 'written',
  asksOneIn: 0,
};

/** What a pupil does is put down here: each action, and each digit that may slip. */
export interface Hand {
  readonly habits: Habits;
  readonly actions: Action[];
  readonly act: (action: Action) => void;
  /** The digit, or with the pupil's slip rate another of 0..9, each equally likely. */
  readonly digit: (meant: number) => number;
  /** As `digit`, of a total or a saying: its lowest digit slips. */
  readonly total: (meant: number) => number;
  readonly slips: () => boolean;
}

const STEADY: Draws = { below: (bound) => bound - 1 };
/** Slip rates are kept as so many in a million. */
const MILLION = 1_000_000;

/** `slip`: chance that a step's digit is replaced, 0..1. Same seed, same slips. */
export function handOf(habits: Habits, slip = 0, seed: number | null = null): Hand {
  const draws = seed === null ? STEADY : drawsFrom(seed);
  const bound = Math.round(slip * MILLION);
  const slips = () => draws.below(MILLION) < bound;
  const other = (digit: number) => (digit + 1 + draws.below(9)) % 10;
  const digit = (meant: number) => (slips() ? other(meant) : meant);
  const actions: Action[] = [];
  const act = (action: Action) => {
    if (habits.asksOneIn > 0 && draws.below(habits.asksOneIn) === 0) {
      actions.push({ do: 'hint', level: 1 });
    }
    actions.push(action);
  };
  const total = (meant: number) => (slips() ? meant - (meant % 10) + other(meant % 10) : meant);
  return { habits, actions, act, digit, total, slips };
}
