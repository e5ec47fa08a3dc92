import type { Problem } from '../problem.ts';
import { type Beliefs, RIGHT_WAY } from '../pupils/beliefs.ts';
import type { Spelled } from './by-list.ts';
import { type Effect, type Fork, type Gain, type Standing, taken } from './effect.ts';
import {
  type Answer,
  type Decisions,
  type Group,
  type Sighting,
  type Single,
  sighting,
  type Topic,
} from './evidence/evidence.ts';
import { besideIn, leftOutOf, logChoices, type Tally, tallyOf, without } from './likelihood.ts';
import type { ListedVariant } from './variants.ts';

/** What was done, held against the right way. */
export interface Compared {
  readonly problem: Problem;
  readonly sighting: Sighting;
  readonly tally: Tally;
  /** The same, whatever lies beyond it; null: nothing does. */
  readonly core: Compared | null;
  /** What the right way has; null: not asked for yet. */
  right: Group | null;
  /** Of the variants of a catalogue, where it has a core but of those that look beyond it; null: not gone through yet. */
  deviations: Deviations | null;
}

/** The variants that have something otherwise than the right way, of those that were gone through. */
export interface Deviations {
  readonly effect: Effect;
  /** By variant: the steps at which something else is due; null: a single decision has but its own. */
  readonly steps: readonly (readonly string[])[] | null;
  /** Variants that looked beyond it: they are not among the others. */
  readonly looking: readonly ListedVariant[];
  /** Variants that nobody has asked for yet. */
  readonly left: readonly ListedVariant[];
}

const NOTHING: Deviations = { effect: [], steps: [], looking: [], left: [] };

/** The variants that may have something otherwise in a sighting, and the effects met with them. */
export interface Bearing {
  readonly variants: readonly ListedVariant[];
  readonly effects: Fork;
}

export function compare(problem: Problem, sighting: Sighting): Compared {
  const right = sighting.topic.expect(problem, sighting.seen, RIGHT_WAY);
  const tally = tallyOf(right, right);
  return { problem, sighting, tally, core: null, right, deviations: null };
}

/** The right way does not look beyond what was done. */
export function compareBeyond(core: Compared, sighting: Sighting): Compared {
  const { problem, tally } = core;
  return { problem, sighting, tally, core, right: rightOf(core), deviations: null };
}

export function compareEach(problem: Problem, { topic, seen }: Decisions): Compared[] {
  const all: Compared[] = [];
  for (const each of seen) {
    const tally = isRight(problem, topic.single, each) ? ONE_RIGHT : oneWrong(topic.single.among);
    const own = sighting(topic, NO_KEY, each);
    all.push({ problem, sighting: own, tally, core: null, right: null, deviations: null });
  }
  return all;
}

const NO_KEY: Spelled = [];

function isRight(problem: Problem, { given, due }: Single<unknown>, seen: unknown): boolean {
  return given(seen) === due(problem, seen, RIGHT_WAY);
}

/** The tally of single decisions, of which nothing else is made. */
export function tallyOfEach(problem: Problem, { topic: { single }, seen }: Decisions): Tally {
  let right = 0;
  for (const each of seen) if (isRight(problem, single, each)) right += 1;
  const other = seen.length - right;
  const choices = other === 0 ? 0 : other * logChoices(single.among);
  return { plain: right, held: 0, lapsed: 0, other, choices };
}

const ONE_RIGHT: Tally = { plain: 1, held: 0, lapsed: 0, other: 0, choices: 0 };
const onesWrong = new Map<number, Tally>();

function oneWrong(among: number): Tally {
  const known = onesWrong.get(among);
  if (known !== undefined) return known;
  const tally = { plain: 0, held: 0, lapsed: 0, other: 1, choices: logChoices(among) };
  onesWrong.set(among, tally);
  return tally;
}

export function rightOf(compared: Compared): Group {
  const { problem, sighting } = compared;
  compared.right ??= sighting.topic.expect(problem, sighting.seen, RIGHT_WAY);
  return compared.right;
}

/** The step of a single decision. */
export function onlyStepOf({ problem, sighting: { topic, seen } }: Compared): string {
  return topic.single!.step(problem, seen);
}

/** Steps that were not done the right way. */
export function wrongIn(compared: Compared): readonly string[] {
  if (compared.tally.other === 0) return NO_STEPS;
  return rightOf(compared).flatMap(({ step, given, expected }) =>
    given === expected ? [] : [step],
  );
}

const NO_STEPS: readonly string[] = [];

export function bearsOn(beliefs: Beliefs, { bears }: Topic<unknown>): boolean {
  return bears.some((name) => beliefs[name] !== undefined);
}

/** As the beliefs have it; the right way's own where they have the same. */
export function groupOf(compared: Compared, beliefs: Beliefs): Group {
  const { problem, sighting } = compared;
  const right = rightOf(compared);
  const group = sighting.topic.expect(problem, sighting.seen, beliefs);
  return group === right || isSame(group, right) ? right : group;
}

function isSame(one: Group, other: Group): boolean {
  if (one.length !== other.length) return false;
  for (let at = 0; at < one.length; at += 1) {
    const [own, same] = [one[at]!, other[at]!];
    if (own.key !== same.key || own.given !== same.given || own.expected !== same.expected)
      return false;
  }
  return true;
}

/** The steps at which something else is due than the right way has it; what is left out counts if it was left out. */
function stepsDue(group: Group, right: Group): string[] {
  const steps: string[] = [];
  for (let at = 0; at < group.length; at += 1) {
    const { key, step, expected } = group[at]!;
    const usual = besideIn(right, key, at)?.expected ?? null;
    if (usual !== expected && !steps.includes(step)) steps.push(step);
  }
  for (const { step } of leftOutOf(group, right)) if (!steps.includes(step)) steps.push(step);
  return steps;
}

/** Before any of the variants that bear on it is gone through: of a single decision all are, at once. */
export function toGoThrough(compared: Compared, bearing: Bearing): Deviations {
  const { single } = compared.sighting.topic;
  compared.deviations =
    single === undefined
      ? { effect: [], steps: [], looking: [], left: bearing.variants }
      : deviationsOfOne(compared, single, bearing);
  return compared.deviations;
}

/**
 * What each of the variants has otherwise, as far as it is asked for: a child shows soon that most are not
 * held, and little of what is done wrong is ever done again.
 */
export function deviationsOf(
  compared: Compared,
  known: Deviations,
  isAsked: (variant: ListedVariant) => boolean,
): Deviations {
  const asked = known.left.filter(isAsked);
  if (asked.length === 0) return known;
  const left = known.left.filter((variant) => !isAsked(variant));
  const { effect, steps, looking } = goneThrough(compared, known, asked);
  compared.deviations = { effect, steps, looking, left };
  return compared.deviations;
}

/** Of all that looked beyond its core so far. */
export function deviationsBeyond(compared: Compared, { looking }: Deviations): Deviations {
  const known = compared.deviations ?? NOTHING;
  const left = looking.slice(known.looking.length);
  if (left.length === 0) return known;
  const { effect, steps } = goneThrough(compared, known, left);
  compared.deviations = { effect, steps, looking, left: [] };
  return compared.deviations;
}

function goneThrough(
  compared: Compared,
  known: Deviations,
  variants: readonly ListedVariant[],
): Deviations {
  const more = deviationsIn(compared, variants);
  return {
    effect: [...known.effect, ...more.effect],
    steps: [...known.steps!, ...more.steps!],
    looking: [...known.looking, ...more.looking],
    left: [],
  };
}

function deviationsIn(compared: Compared, variants: readonly ListedVariant[]): Deviations {
  const right = rightOf(compared);
  const { core, sighting, tally } = compared;
  const effect: Gain[] = [];
  const steps: string[][] = [];
  const looking: ListedVariant[] = [];
  for (const variant of variants) {
    if (sighting.beyond !== null) sighting.beyond.looked = false;
    const group = groupOf(compared, variant.beliefs);
    if (core === null && sighting.beyond?.looked === true) {
      looking.push(variant);
    } else if (group !== right) {
      effect.push({ variant, gain: without(tallyOf(group, right), tally) });
      steps.push(stepsDue(group, right));
    }
  }
  return { effect, steps, looking, left: [] };
}

/** The same of a single decision, without making a group of it for each variant. */
function deviationsOfOne(
  { problem, sighting: { seen } }: Compared,
  { given, due, among }: Single<unknown>,
  { variants, effects }: Bearing,
): Deviations {
  const done = given(seen);
  const usual = due(problem, seen, RIGHT_WAY);
  let fork = effects;
  for (const { beliefs } of variants)
    fork = taken(fork, standingOf(done, due(problem, seen, beliefs), usual));
  fork.effect ??= effectOfOne(
    variants.map((variant) => ({
      variant,
      standing: standingOf(done, due(problem, seen, variant.beliefs), usual),
    })),
    among,
  );
  return { effect: fork.effect, steps: null, looking: [], left: [] };
}

function standingOf(given: Answer, expected: Answer, usual: Answer): Standing {
  if (expected === usual) return 'same';
  if (given === expected) return 'held';
  return given === usual ? 'lapsed' : 'other';
}

interface Stands {
  readonly variant: ListedVariant;
  readonly standing: Standing;
}

function effectOfOne(stands: readonly Stands[], among: number): Effect {
  const wrong = oneWrong(among);
  const gains = {
    held: without({ ...ONE_RIGHT, plain: 0, held: 1 }, wrong),
    lapsed: without({ ...ONE_RIGHT, plain: 0, lapsed: 1 }, ONE_RIGHT),
    other: without(wrong, wrong),
  };
  return stands.flatMap(({ variant, standing }) =>
    standing === 'same' ? [] : [{ variant, gain: gains[standing] }],
  );
}
