import { CATALOGUE } from '../patterns/catalogue/index.ts';
import { doneWork } from '../patterns/done.ts';
import { type Explanation, explain } from '../patterns/explain.ts';
import { recurs, type StepOfWork, supportIn } from '../patterns/reading.ts';
import { type Variant, variantsFor } from '../patterns/variants.ts';
import type { Problem } from '../problem.ts';
import { type Draws, drawsFrom } from '../problems/random.ts';
import { type Beliefs, holdingBoth, RIGHT_WAY } from './beliefs.ts';
import { type Habits, handOf, USUAL_HABITS } from './hand.ts';
import { OUTSIDERS } from './outside.ts';
import { playThrough } from './play.ts';

/** What a synthetic pupil holds; `outside`: a faulty procedure that is in no file of the catalogue. */
export interface Pupil {
  readonly kind: 'single' | 'pair' | 'slipsOnly' | 'outside';
  readonly holds: readonly Variant[];
  readonly beliefs: Beliefs;
}

export interface Told {
  readonly pupil: Pupil;
  readonly explanation: Explanation;
}

/** Of a hundred pupils: so many with one pattern, with two, with slips only; the rest outside. */
const SHARES = { single: 40, pair: 20, slipsOnly: 20 } as const;

/** The variants that at least three steps in two of the problems could show. */
export function eligibleVariants(problems: readonly Problem[]): readonly Variant[] {
  const untouched = problems.map((problem) => doneWork(problem, []));
  return variantsFor(CATALOGUE, untouched).filter((variant) =>
    recurs(supportOf(problems, [variant], variant)),
  );
}

/** The steps that a pupil without slips who holds these owes to this one. */
function supportOf(
  problems: readonly Problem[],
  held: readonly Variant[],
  one: Variant,
  habits: Habits = USUAL_HABITS,
): StepOfWork[] {
  const beliefs = held.reduce<Beliefs>((all, each) => holdingBoth(all, each.beliefs), RIGHT_WAY);
  const works = problems.map((problem) =>
    doneWork(problem, playThrough(problem, beliefs, handOf(habits))),
  );
  return supportIn(works, held, one);
}

/** Pupils in turn, each with its own part of the seed, and what is explained of their work. */
export function measure(
  problems: readonly Problem[],
  { seed, pupils, slip }: { readonly seed: number; readonly pupils: number; readonly slip: number },
): Told[] {
  const draws = drawsFrom(seed);
  const eligible = byPattern(eligibleVariants(problems));
  return Array.from({ length: pupils }, (_, index) => {
    const pupil = pupilFor(problems, eligible, draws, index % 100);
    const habits = habitsFor(problems, pupil, draws);
    const works = problems.map((problem) => {
      const hand = handOf(habits, slip, draws.below(2 ** 32));
      return doneWork(problem, playThrough(problem, pupil.beliefs, hand));
    });
    return { pupil, explanation: explain(works) };
  });
}

/** Patterns are drawn alike, then the parameter within the family. */
function byPattern(variants: readonly Variant[]): readonly (readonly Variant[])[] {
  const families = new Map<string, Variant[]>();
  for (const variant of variants) {
    const { id } = variant.pattern;
    families.set(id, [...(families.get(id) ?? []), variant]);
  }
  return [...families.values()];
}

function pick<T>(draws: Draws, from: readonly T[]): T {
  return from[draws.below(from.length)]!;
}

/** Habits with which all that the pupil holds can show: carries that are never noted are never added again. */
function habitsFor(problems: readonly Problem[], { holds }: Pupil, draws: Draws): Habits {
  for (;;) {
    const habits = habitsFrom(draws);
    if (holds.every((each) => recurs(supportOf(problems, holds, each, habits)))) return habits;
  }
}

function habitsFrom(draws: Draws): Habits {
  return {
    rows: draws.below(5) === 0 ? 'topFirst' : 'unitsFirst',
    carries: draws.below(4) === 0 ? 'inTheHead' : 'noted',
    placeholders: draws.below(4) === 0 ? 'leftEmpty' : 'written',
    asksOneIn: draws.below(3) === 0 ? 12 : 0,
  };
}

function pupilFor(
  problems: readonly Problem[],
  eligible: readonly (readonly Variant[])[],
  draws: Draws,
  turn: number,
): Pupil {
  if (turn < SHARES.single) return holding('single', [pick(draws, pick(draws, eligible))]);
  if (turn < SHARES.single + SHARES.pair)
    return holding('pair', pairFrom(problems, eligible, draws));
  if (turn < SHARES.single + SHARES.pair + SHARES.slipsOnly) return holding('slipsOnly', []);
  const { stage } = problems[0]!;
  const outsider = pick(
    draws,
    OUTSIDERS.filter(({ stages }) => stages.includes(stage)),
  );
  return { kind: 'outside', holds: [], beliefs: outsider.beliefs };
}

function holding(kind: Pupil['kind'], holds: readonly Variant[]): Pupil {
  const beliefs = holds.reduce<Beliefs>((all, each) => holdingBoth(all, each.beliefs), RIGHT_WAY);
  return { kind, holds, beliefs };
}

/** Two patterns that change different steps, each of which still shows beside the other. */
function pairFrom(
  problems: readonly Problem[],
  eligible: readonly (readonly Variant[])[],
  draws: Draws,
): readonly Variant[] {
  for (;;) {
    const pair = [pick(draws, pick(draws, eligible)), pick(draws, pick(draws, eligible))];
    const [one, other] = pair as [Variant, Variant];
    if (one.pattern === other.pattern || meet(problems, one, other)) continue;
    if (pair.every((each) => recurs(supportOf(problems, pair, each)))) return pair;
  }
}

function meet(problems: readonly Problem[], one: Variant, other: Variant): boolean {
  const steps = new Set(supportOf(problems, [one], one).map(nameOf));
  return supportOf(problems, [other], other).some((step) => steps.has(nameOf(step)));
}

function nameOf({ work, step }: StepOfWork): string {
  return `${work} ${step}`;
}
