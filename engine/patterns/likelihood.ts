import type { Answer, Group } from './evidence/evidence.ts';

/**
 * Chances that a decision comes out otherwise than meant, and that a pupil with a pattern does the
 * right thing after all. Own proposals, round Thorndike's 3 % of wrong answer figures.
 */
const SLIP_RATES = [0.01, 0.04, 0.08] as const;
const LAPSE = 0.04;
/** How often a pupil errs who works by something regular that is not known here. */
const UNNAMED_RATES = [0.15, 0.3, 0.5, 0.75] as const;

/** How what was done stands to what was expected. */
export interface Tally {
  /** As expected: where the right way would have had the same; where it would not. */
  readonly plain: number;
  readonly held: number;
  /** Otherwise than expected: the right thing after all; something else. */
  readonly lapsed: number;
  readonly other: number;
  /** Σ ln of the number of other answers, over `other`. */
  readonly choices: number;
}

/** What the right way would have had, by key of the decision. */
export interface RightAnswers {
  readonly expected: ReadonlyMap<number, Answer>;
  /** Keys of what was due and left out. */
  readonly leftOut: readonly number[];
}

export function rightAnswersOf(group: Group): RightAnswers {
  return {
    expected: new Map(group.map(({ key, expected }) => [key, expected])),
    leftOut: group.flatMap(({ key, given }) => (given === null ? [key] : [])),
  };
}

const GRAIN = 2 ** 40;

/** ln of the number of other answers, to a grain with which sums are the same in whatever order. */
export function logChoices(among: number): number {
  return Math.round(Math.log(among - 1) * GRAIN) / GRAIN;
}

/** What the beliefs leave out and the child left out was done as they have it, too. */
export function tallyOf(group: Group, { expected: rightly, leftOut }: RightAnswers): Tally {
  let [plain, held, lapsed, other, choices] = [0, 0, 0, 0, 0];
  for (const { key, given, expected, among } of group) {
    const right = rightly.get(key) ?? null;
    if (given === expected) {
      if (expected === right) plain += 1;
      else held += 1;
    } else if (given === right) lapsed += 1;
    else {
      other += 1;
      choices += logChoices(among);
    }
  }
  for (const key of leftOut) if (!group.some((each) => each.key === key)) held += 1;
  return { plain, held, lapsed, other, choices };
}

const NOTHING: Tally = { plain: 0, held: 0, lapsed: 0, other: 0, choices: 0 };

function plus(one: Tally, other: Tally, times: 1 | -1): Tally {
  return {
    plain: one.plain + times * other.plain,
    held: one.held + times * other.held,
    lapsed: one.lapsed + times * other.lapsed,
    other: one.other + times * other.other,
    choices: one.choices + times * other.choices,
  };
}

export function addedUp(tallies: readonly Tally[]): Tally {
  return tallies.reduce((sum, tally) => plus(sum, tally, 1), NOTHING);
}

export function without(one: Tally, other: Tally): Tally {
  return plus(one, other, -1);
}

/** The tally of all with some parts counted otherwise. */
export function exchanged(total: Tally, taken: readonly Tally[], instead: readonly Tally[]): Tally {
  return without(addedUp([total, ...instead]), addedUp(taken));
}

/** ln of the chance of what was done, if the beliefs are held. */
export function logHeld(tally: Tally): number {
  return logMean(SLIP_RATES.map((rate) => atRate(tally, rate)));
}

/** The same, if something regular that is not known here is done besides. */
export function logUnnamed(tally: Tally): number {
  return logMean(UNNAMED_RATES.map((rate) => atRate(tally, rate)));
}

function atRate({ plain, held, lapsed, other, choices }: Tally, slip: number): number {
  return (
    plain * Math.log(1 - slip) +
    held * Math.log((1 - slip) * (1 - LAPSE)) +
    lapsed * Math.log(LAPSE + slip / 9) +
    other * Math.log(slip) -
    choices
  );
}

function logMean(logs: readonly number[]): number {
  return logSum(logs) - Math.log(logs.length);
}

export function logSum(logs: readonly number[]): number {
  const most = Math.max(...logs);
  return most + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - most), 0));
}
