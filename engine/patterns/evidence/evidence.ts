import type { Square } from '../../mat/geometry.ts';
import type { Problem } from '../../problem.ts';
import type { Beliefs } from '../../pupils/beliefs.ts';

/**
 * One decision that the child took, beside what a belief would have had it be, all that went before
 * being the child's own. `among`: how many answers were possible.
 */
export interface Expectation {
  /** Within its strand the same decision has the same key whatever is believed. */
  readonly key: number;
  /** The judge's step that it belongs to. */
  readonly step: string;
  readonly given: Answer;
  readonly expected: Answer;
  readonly among: number;
}

/** null: nothing there, not done. */
export type Answer = number | string | null;

/** Decisions that are held against beliefs together. */
export type Group = readonly Expectation[];

/** A kind of thing that children do: which beliefs bear on it, and what they would have had done. */
export interface Topic<Seen> {
  /** Whatever else is believed leaves it as it is. */
  readonly bears: readonly (keyof Beliefs)[];
  /** The facts that come up, as `10 a + b`: beliefs about none but others leave it as it is. */
  facts?(problem: Problem, seen: Seen): readonly number[];
  /** As the beliefs have it, from nothing but the problem and what was seen. */
  expect(problem: Problem, seen: Seen, beliefs: Beliefs): Group;
}

/** One thing that the child did, with all that it was done from. */
export interface Sighting<Seen = unknown> {
  readonly topic: Topic<Seen>;
  /** Spells out what was seen: in one problem, what has the same key is the same. */
  readonly key: string;
  readonly seen: Seen;
  /** Where the keys of its decisions begin within the strand. */
  readonly from: number;
}

/** What hangs together: a row, all slides; of one topic. */
export type Strand = readonly Sighting[];

export function sighting<Seen>(
  topic: Topic<Seen>,
  key: string,
  seen: Seen,
  from = 0,
): Sighting<Seen> {
  return { topic, key, seen, from };
}

export function factsWith(b: number, across: readonly number[]): number[] {
  return across.map((a) => 10 * a + b);
}

export function isSameSquare(one: Square, other: Square): boolean {
  return one[0] === other[0] && one[1] === other[1];
}

export const DIGITS = 10;

/** Lines, rows and edges have fewer places: a key is `row * ROOM + place`, or beyond places something else. */
export const ROOM = 64;
