import { CATALOGUE } from '../patterns/catalogue/index.ts';
import { doneWork } from '../patterns/done.ts';
import { type Explanation, explain } from '../patterns/explain.ts';
import { recurs, supportIn, type Variant, variantsFor } from '../patterns/reading.ts';
import type { Problem } from '../problem.ts';
import { type Draws, drawsFrom } from '../problems/random.ts';
import { type Beliefs, holdingBoth, RIGHT_WAY } from './beliefs.ts';
import { type Habits, handOf } from './hand.ts';
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
  return variantsFor(CATALOGUE, untouched).filter((variant) => shows(problems, [variant], variant));
}

/** Whether a pupil without slips who holds these shows this one, by its own doing. */
function shows(problems: readonly Problem[], held: readonly Variant[], one: Variant): boolean {
  const beliefs = held.reduce<Beliefs>((all, each) => holdingBoth(all, each.beliefs), RIGHT_WAY);
  const works = problems.map((problem) => doneWork(problem, playThrough(problem, beliefs)));
  return recurs(supportIn(works, held, one));
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
    const habits = habitsFrom(draws);
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

/** Two patterns that change different steps: each still shows beside the other. */
function pairFrom(
  problems: readonly Problem[],
  eligible: readonly (readonly Variant[])[],
  draws: Draws,
): readonly Variant[] {
  for (;;) {
    const [one, other] = [pick(draws, eligible), pick(draws, eligible)];
    if (one === other) continue;
    const pair = [pick(draws, one), pick(draws, other)];
    if (pair.every((each) => shows(problems, pair, each))) return pair;
  }
}
