import type { Beliefs } from '../../pupils/beliefs.ts';

/**
 * One decision that the child took, beside what a belief would have had it be, all that went before
 * being the child's own. `among`: how many answers were possible.
 */
export interface Expectation {
  /** Within its group the same decision has the same key whatever is believed. */
  readonly key: number;
  /** The judge's step that it belongs to. */
  readonly step: string;
  readonly given: Answer;
  readonly expected: Answer;
  readonly among: number;
}

/** null: nothing there, not done. */
export type Answer = number | string | null;

/** Decisions that hang together: a line, all slides. What no belief changes stays the same array. */
export type Group = readonly Expectation[];

/** A part of a work that only some beliefs bear on: whatever else is believed leaves it as it is. */
export interface EvidencePart {
  readonly bears: readonly (keyof Beliefs)[];
  /** As many groups, in the same order, whatever is believed. */
  readonly expect: (beliefs: Beliefs) => readonly Group[];
}

/** A part that is one group. */
export function oneGroup(
  bears: EvidencePart['bears'],
  expect: (beliefs: Beliefs) => Group,
): EvidencePart {
  return { bears, expect: (beliefs) => [expect(beliefs)] };
}

export const DIGITS = 10;

/** Lines, rows and edges have fewer places: a key is `row * ROOM + place`, or beyond places something else. */
export const ROOM = 64;
