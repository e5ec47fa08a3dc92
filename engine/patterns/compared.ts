import type { Problem } from '../problem.ts';
import { type Beliefs, RIGHT_WAY } from '../pupils/beliefs.ts';
import type { Group, Sighting, Topic } from './evidence/evidence.ts';
import { type RightAnswers, rightAnswersOf, type Tally, tallyOf, without } from './likelihood.ts';
import type { ListedVariant } from './variants.ts';

/** What was done, held against the right way. */
export interface Compared {
  readonly problem: Problem;
  readonly sighting: Sighting;
  readonly right: Group;
  readonly answers: RightAnswers;
  readonly tally: Tally;
  /** Steps that were not done the right way. */
  readonly wrong: readonly string[];
  /** Of the variants of a catalogue; null: not gone through yet. */
  deviations: Deviations | null;
}

/**
 * The variants that have something otherwise than the right way, side by side in lists of equal length:
 * whole classes are counted over them.
 */
export interface Deviations {
  /** Places of the variants in their catalogue. */
  readonly variants: Uint16Array;
  readonly beliefs: readonly Beliefs[];
  /** What the tally has more than the right way's. */
  readonly plain: Int8Array;
  readonly held: Int8Array;
  readonly lapsed: Int8Array;
  readonly other: Int8Array;
  readonly choices: Float64Array;
  /** Steps at which something else is due. */
  readonly steps: readonly (readonly string[])[];
}

export function compare(problem: Problem, sighting: Sighting): Compared {
  const right = sighting.topic.expect(problem, sighting.seen, RIGHT_WAY);
  const answers = rightAnswersOf(right);
  const wrong = right.flatMap(({ step, given, expected }) => (given === expected ? [] : [step]));
  const tally = tallyOf(right, answers);
  return { problem, sighting, right, answers, tally, wrong, deviations: null };
}

export function bearsOn(beliefs: Beliefs, { bears }: Topic<unknown>): boolean {
  return bears.some((name) => beliefs[name] !== undefined);
}

/** As the beliefs have it; the right way's own where they have the same. */
export function groupOf({ problem, sighting, right }: Compared, beliefs: Beliefs): Group {
  const group = sighting.topic.expect(problem, sighting.seen, beliefs);
  return group === right || isSame(group, right) ? right : group;
}

function isSame(one: Group, other: Group): boolean {
  return (
    one.length === other.length &&
    one.every(({ key, given, expected }, at) => {
      const same = other[at]!;
      return key === same.key && given === same.given && expected === same.expected;
    })
  );
}

/** The steps at which something else is due than the right way has it; what is left out counts if it was left out. */
function stepsDue({ right, answers }: Compared, group: Group): string[] {
  const steps: string[] = [];
  for (const { key, step, expected } of group) {
    if ((answers.expected.get(key) ?? null) !== expected) steps.push(step);
  }
  for (const left of answers.leftOut) {
    if (group.some(({ key }) => key === left)) continue;
    steps.push(right.find(({ key }) => key === left)!.step);
  }
  return [...new Set(steps)];
}

/** What each of the variants that bear on it has otherwise: gone through once. */
export function deviationsOf(compared: Compared, bearing: readonly ListedVariant[]): Deviations {
  compared.deviations ??= goneThrough(compared, bearing);
  return compared.deviations;
}

function goneThrough(compared: Compared, bearing: readonly ListedVariant[]): Deviations {
  const { right, answers, tally } = compared;
  const found = bearing.flatMap(({ at, beliefs }) => {
    const group = groupOf(compared, beliefs);
    if (group === right) return [];
    const gain = without(tallyOf(group, answers), tally);
    return [{ at, beliefs, gain, steps: stepsDue(compared, group) }];
  });
  return {
    variants: Uint16Array.from(found, ({ at }) => at),
    beliefs: found.map(({ beliefs }) => beliefs),
    plain: Int8Array.from(found, ({ gain }) => gain.plain),
    held: Int8Array.from(found, ({ gain }) => gain.held),
    lapsed: Int8Array.from(found, ({ gain }) => gain.lapsed),
    other: Int8Array.from(found, ({ gain }) => gain.other),
    choices: Float64Array.from(found, ({ gain }) => gain.choices),
    steps: found.map(({ steps }) => steps),
  };
}
