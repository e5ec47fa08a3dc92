import type { Mat, Square } from './mat/geometry.ts';
import type { Numeral } from './numerals/numeral.ts';
import type { Control, Laying, Stage, Status } from './vocabulary.ts';

/** How the mat answers and what counts. `marks`: value of each status, as exact texts ("0.6", "3/5"). */
export interface Policy {
  readonly control: Control;
  readonly laying: Laying;
  /** Whether each row's partial product is said from the mat (stages bars1, bars, facts). */
  readonly readRows: boolean;
  readonly marks: Readonly<Record<Status, string>>;
  /** The page takes a wrong action back at once; the engine only sees the undo. */
  readonly bounce: boolean;
  /**
   * The page lets the child watch another problem of the same shape being worked. It shows no step of this one, so it
   * costs no mark; that it was watched stands in the log as a hint of level 1.
   */
  readonly presentation: boolean;
}

export const DEFAULT_POLICY: Policy = {
  control: 'checkpoint',
  laying: 'either',
  readRows: true,
  marks: { first: '1', corrected: '0.6', follows: '1', hinted: '0.5', notRight: '0', open: '0' },
  bounce: false,
  presentation: false,
};

/** A question of `walk` or `build`. Places are absolute. */
export type Prompt =
  | { readonly ask: 'worth'; readonly square: Square }
  | { readonly ask: 'square'; readonly place: number }
  | { readonly ask: 'category'; readonly places: readonly [across: number, up: number] }
  | { readonly ask: 'number'; readonly of: 'multiplicand' | 'multiplier' };

/** What can be played: made only by `parseProblem`. Numerals without digits: a problem without numbers. */
export interface Problem {
  readonly stage: Stage;
  readonly multiplicand: Numeral;
  readonly multiplier: Numeral;
  readonly mat: Mat;
  readonly policy: Policy;
  readonly prompts: readonly Prompt[];
  /** How `walk` drew its prompts; null at the other stages. */
  readonly walk: {
    readonly seed: number;
    readonly prompts: number;
    readonly categories: boolean;
  } | null;
}

/** What was written and may be impossible; the shape that is stored and sent. */
export interface WrittenProblem {
  readonly stage: Stage;
  readonly multiplicand?: string;
  readonly multiplier?: string;
  readonly mat?: { readonly rows: number; readonly columns: number };
  readonly policy?: WrittenPolicy;
  readonly seed?: number;
  readonly prompts?: number;
  readonly categories?: boolean;
}

export interface WrittenPolicy {
  readonly control?: Control;
  readonly laying?: Laying;
  readonly readRows?: boolean;
  readonly marks?: Readonly<Partial<Record<Status, string>>>;
  readonly bounce?: boolean;
  readonly presentation?: boolean;
}
