import type { Work } from './judge/work.ts';
import {
  type Fraction,
  fraction,
  over,
  parseFraction,
  plus,
  roundedText,
  times,
  ZERO,
} from './numerals/fraction.ts';
import { fail, ok, type Result } from './result.ts';
import type { Skill } from './vocabulary.ts';

export interface Score {
  readonly awarded: Fraction;
  readonly available: Fraction;
  /** awarded ÷ available; 0 where nothing was to be had. */
  readonly fraction: Fraction;
}

const ONE = fraction(1n, 1n);

/** Σ awarded ÷ Σ available over all problems of the activity, exact; each step is worth one. */
export function score(works: readonly Work[]): Score {
  return scoreOf(works, () => true);
}

/** The same for each skill that the works have steps of. */
export function scoreBySkill(works: readonly Work[]): Readonly<Partial<Record<Skill, Score>>> {
  const skills = new Set(works.flatMap((work) => work.steps.map(({ skill }) => skill)));
  return Object.fromEntries(
    [...skills].map((each) => [each, scoreOf(works, (skill) => skill === each)]),
  );
}

function scoreOf(works: readonly Work[], counts: (skill: Skill) => boolean): Score {
  let awarded = ZERO;
  let available = ZERO;
  for (const { problem, steps } of works)
    for (const { skill, status } of steps) {
      if (!counts(skill)) continue;
      awarded = plus(awarded, parseFraction(problem.policy.marks[status])!);
      available = plus(available, ONE);
    }
  return { awarded, available, fraction: available.num === 0n ? ZERO : over(awarded, available) };
}

/**
 * Fraction × the line item's maximum, rounded half up to two decimals, once: "11.80". Maximum: a number of at most
 * six decimals, else the fault `notANumber`.
 */
export function toPoints(share: Fraction, maximum: string | number): Result<string> {
  const most = parseFraction(String(maximum));
  return most === null ? fail('notANumber', 'maximum') : ok(roundedText(times(share, most), 2));
}
