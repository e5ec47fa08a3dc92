import type { Problem } from '../../problem.ts';
import type { Beliefs } from '../../pupils/beliefs.ts';
import type { Spelled } from '../by-list.ts';

/**
 * One decision that the child took, beside what a belief would have had it be, all that went before
 * being the child's own. `among`: how many answers were possible.
 */
export interface Expectation {
  /** Within its sighting the same decision has the same key whatever is believed. */
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
  /** Where each sighting is a single decision: its parts, so that no list need be made of it. */
  readonly single?: Single<Seen>;
}

export interface SingleTopic<Seen> extends Topic<Seen> {
  readonly single: Single<Seen>;
}

/** A single decision. */
export interface Single<Seen> {
  readonly among: number;
  step(problem: Problem, seen: Seen): string;
  given(seen: Seen): Answer;
  due(problem: Problem, seen: Seen, beliefs: Beliefs): Answer;
}

/** A topic whose sightings are single decisions. */
export function singly<Seen>(bears: Topic<Seen>['bears'], single: Single<Seen>): SingleTopic<Seen> {
  const { among, step, given, due } = single;
  return {
    bears,
    single,
    expect: (problem, seen, beliefs) => [
      {
        key: 0,
        step: step(problem, seen),
        given: given(seen),
        expected: due(problem, seen, beliefs),
        among,
      },
    ],
  };
}

/** What was done before, which few beliefs look at; those that do may have something else from it. */
export interface Beyond {
  /** Spells it out. */
  readonly key: Spelled;
  /** Set by whoever looks at it. */
  looked: boolean;
}

/** One thing that the child did, with all that it was done from. */
export interface Sighting<Seen = unknown> {
  readonly topic: Topic<Seen>;
  /** Spells out what was seen, but for what lies beyond: in one problem, what has the same key is the same. */
  readonly key: Spelled;
  readonly seen: Seen;
  readonly beyond: Beyond | null;
}

/** What hangs together: a row, all slides; of one topic. */
export type Strand = readonly Sighting[] | Decisions;

/**
 * Single decisions, by what was seen at each. A work has so many, and soon so little hangs on them but whether they
 * were right, that no sightings are made of them before they are asked for.
 */
export interface Decisions<Seen = unknown> {
  readonly topic: SingleTopic<Seen>;
  readonly seen: readonly Seen[];
}

export function sighting<Seen>(
  topic: Topic<Seen>,
  key: Sighting['key'],
  seen: Seen,
  beyond: Beyond | null = null,
): Sighting<Seen> {
  return { topic, key, seen, beyond };
}

export function factsWith(b: number, across: readonly number[]): number[] {
  return across.map((a) => 10 * a + b);
}

export const DIGITS = 10;

/** Lines, rows and edges have fewer places: a key is `row * ROOM + place`, or beyond places something else. */
export const ROOM = 64;
