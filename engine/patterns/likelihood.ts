import type { Expectation, Group } from './evidence/evidence.ts';

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

const GRAIN = 2 ** 40;

/** ln of the number of other answers, to a grain with which sums are the same in whatever order. */
export function logChoices(among: number): number {
  return Math.round(Math.log(among - 1) * GRAIN) / GRAIN;
}

/**
 * How what was done stands to a group, beside the right way's group of the same sighting. What the
 * beliefs leave out and the child left out was done as they have it, too.
 */
export function tallyOf(group: Group, right: Group): Tally {
  let [plain, held, lapsed, other, choices] = [0, 0, 0, 0, 0];
  for (let at = 0; at < group.length; at += 1) {
    const { key, given, expected, among } = group[at]!;
    const usual = besideIn(right, key, at)?.expected ?? null;
    if (given === expected) {
      if (expected === usual) plain += 1;
      else held += 1;
    } else if (given === usual) lapsed += 1;
    else {
      other += 1;
      choices += logChoices(among);
    }
  }
  held += leftOutOf(group, right).length;
  return { plain, held, lapsed, other, choices };
}

/** The decision of that key; nearly always it has the same place in both lists. */
export function besideIn(group: Group, key: number, at: number): Expectation | undefined {
  const same = group[at];
  return same?.key === key ? same : group.find((each) => each.key === key);
}

const NONE: readonly Expectation[] = [];

/** What the right way has due, the child left out and the group has nothing of. */
export function leftOutOf(group: Group, right: Group): readonly Expectation[] {
  let found: Expectation[] | null = null;
  for (let at = 0; at < right.length; at += 1) {
    const each = right[at]!;
    if (each.given !== null || besideIn(group, each.key, at) !== undefined) continue;
    found ??= [];
    found.push(each);
  }
  return found ?? NONE;
}

export function addedUp(tallies: readonly Tally[]): Tally {
  let [plain, held, lapsed, other, choices] = [0, 0, 0, 0, 0];
  for (const each of tallies) {
    plain += each.plain;
    held += each.held;
    lapsed += each.lapsed;
    other += each.other;
    choices += each.choices;
  }
  return { plain, held, lapsed, other, choices };
}

export function without(one: Tally, other: Tally): Tally {
  return {
    plain: one.plain - other.plain,
    held: one.held - other.held,
    lapsed: one.lapsed - other.lapsed,
    other: one.other - other.other,
    choices: one.choices - other.choices,
  };
}

/** The tally of all with some parts counted otherwise. */
export function exchanged(total: Tally, taken: readonly Tally[], instead: readonly Tally[]): Tally {
  return without(addedUp([total, ...instead]), addedUp(taken));
}

/** ln of the chances of each way a decision may come out, at one rate of slips. */
interface Rate {
  readonly plain: number;
  readonly held: number;
  readonly lapsed: number;
  readonly other: number;
}

function rateOf(slip: number): Rate {
  return {
    plain: Math.log(1 - slip),
    held: Math.log((1 - slip) * (1 - LAPSE)),
    lapsed: Math.log(LAPSE + slip / 9),
    other: Math.log(slip),
  };
}

const SLIPPING = SLIP_RATES.map(rateOf);
const ERRING = UNNAMED_RATES.map(rateOf);

/** ln of the chance of what was done, if the beliefs are held. */
export function logHeld(tally: Tally): number {
  return logMean(tally, SLIPPING);
}

/** The same, if something regular that is not known here is done besides. */
export function logUnnamed(tally: Tally): number {
  return logMean(tally, ERRING);
}

/** As `logSum`, over rates that are alike likely; asked for every variant, it makes no list. */
function logMean(tally: Tally, rates: readonly Rate[]): number {
  let most = Number.NEGATIVE_INFINITY;
  for (const rate of rates) most = Math.max(most, atRate(tally, rate));
  let sum = 0;
  for (const rate of rates) sum += Math.exp(atRate(tally, rate) - most);
  return most + Math.log(sum) - Math.log(rates.length);
}

function atRate({ plain, held, lapsed, other, choices }: Tally, rate: Rate): number {
  return (
    plain * rate.plain + held * rate.held + lapsed * rate.lapsed + other * rate.other - choices
  );
}

export function logSum(logs: readonly number[]): number {
  const most = Math.max(...logs);
  return most + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - most), 0));
}
