import { atLeast } from './binomial.ts';
import { CATALOGUE } from './catalogue/index.ts';
import type { DoneWork } from './done.ts';
import { type Expected, logHeld, logSum, logUnnamed, tallyOf } from './likelihood.ts';
import type { ErrorPattern } from './pattern.ts';
import {
  bearings,
  type Decision,
  differences,
  type Reading,
  readWorks,
  recurs,
  type StepOfWork,
  stepsOf,
  type Variant,
  variantsFor,
} from './reading.ts';

/** Patterns that the work shows; several ids: rivals that it cannot tell apart. */
export interface Reported {
  readonly ids: readonly string[];
  /** 0..1. */
  readonly posterior: number;
  readonly steps: readonly StepOfWork[];
}

export interface Explanation {
  readonly reported: readonly Reported[];
  /** Something regular that fits no pattern known here. */
  readonly unnamed: boolean;
  /** Patterns of these stages that the work could not have shown. */
  readonly notTested: readonly string[];
}

/** Beliefs before any work is seen. Own proposal: some one in five has a pattern (Cox: 5 to 13 %). */
const PRIOR = { none: 0.75, one: 0.15, two: 0.05, unnamed: 0.05 } as const;
const CERTAIN = 0.9;
/** A pattern is paired with others only if the child did as it says at least so often. */
const LEAST_HELD = 2;
/** So many patterns are paired with all others. */
const LEADING = 5;

interface Hypothesis {
  readonly variants: readonly Variant[];
  readonly expected: Expected;
  readonly log: number;
}

/**
 * Which error patterns explain the works of one child, by all that was done in them. Works may be of
 * different stages; patterns are held to the works of their own stages. Posterior over slips only,
 * each pattern, each pair, and something unnamed.
 */
export function explain(
  works: readonly DoneWork[],
  catalogue: readonly ErrorPattern[] = CATALOGUE,
): Explanation {
  const reading = readWorks(works);
  const variants = variantsFor(catalogue, works);
  const singles = variants.map((variant) => ({
    variants: [variant],
    expected: reading.expectedOf([variant]),
  }));
  const notTested = untested(reading, singles);
  if (!recurs(stepsOf(wrongIn(reading.rightWay)))) {
    return { reported: [], unnamed: false, notTested };
  }
  const { named, unnamed } = weigh(reading, singles, catalogue.length);
  return { ...judged(reading, named, unnamed), notTested };
}

type Single = Omit<Hypothesis, 'log'>;

/** Decisions that were not taken as expected. */
function wrongIn(expected: Expected): Decision[] {
  return expected.flatMap((own, work) =>
    [...own.values()].flatMap(({ step, given, expected: due }) =>
      given === due ? [] : [{ work, step, held: false }],
    ),
  );
}

function untested(reading: Reading, singles: readonly Single[]): string[] {
  const tested = new Map<string, boolean>();
  for (const { variants, expected } of singles) {
    const { id } = variants[0]!.pattern;
    const shows = stepsOf(differences(expected, reading.rightWay));
    tested.set(id, tested.get(id) === true || recurs(shows));
  }
  return [...tested].flatMap(([id, is]) => (is ? [] : [id]));
}

interface Weighed {
  readonly named: readonly Hypothesis[];
  /** ln of the chance of all that has something unnamed in it. */
  readonly unnamed: number;
}

function weigh(reading: Reading, singles: readonly Single[], patterns: number): Weighed {
  const none = tallyOf(reading.rightWay, reading.rightWay);
  const named: Hypothesis[] = [
    { variants: [], expected: reading.rightWay, log: Math.log(PRIOR.none) + logHeld(none) },
  ];
  const unnamed = [Math.log(PRIOR.unnamed) + logUnnamed(none)];
  const candidates: Hypothesis[] = [];
  const shareOf = sharesOf(singles);
  for (const single of singles) {
    const tally = tallyOf(single.expected, reading.rightWay);
    const share = shareOf(single.variants[0]!) - Math.log(patterns);
    named.push({ ...single, log: Math.log(PRIOR.one) + share + logHeld(tally) });
    if (tally.held < LEAST_HELD) continue;
    candidates.push({ ...single, log: share + logHeld(tally) });
    unnamed.push(Math.log(PRIOR.one * PRIOR.unnamed) + share + logUnnamed(tally));
  }
  named.push(...pairsOf(reading, candidates, patterns, shareOf));
  return { named, unnamed: logSum(unnamed) };
}

/** ln of a variant's part in its family: of those that the works could show, each alike. */
function sharesOf(singles: readonly Single[]): (variant: Variant) => number {
  const members = new Map<ErrorPattern, number>();
  for (const { variants } of singles) {
    const { pattern } = variants[0]!;
    members.set(pattern, (members.get(pattern) ?? 0) + 1);
  }
  return ({ pattern }) => -Math.log(members.get(pattern)!);
}

/** Pairs of which at least one is among the patterns that alone explain most. */
function pairsOf(
  reading: Reading,
  candidates: readonly Hypothesis[],
  patterns: number,
  shareOf: (variant: Variant) => number,
): Hypothesis[] {
  const prior = Math.log((PRIOR.two * 2) / (patterns * (patterns - 1)));
  const ranked = [...candidates].sort((one, other) => other.log - one.log);
  const leading = bestOfEach(ranked).slice(0, LEADING);
  return leading.flatMap((one, index) =>
    ranked.flatMap((other) => {
      const variants = [one.variants[0]!, other.variants[0]!];
      if (variants[0]!.pattern === variants[1]!.pattern) return [];
      if (leading.slice(0, index).includes(other)) return [];
      const expected = reading.expectedOf(variants);
      const share = shareOf(variants[0]!) + shareOf(variants[1]!);
      const log = prior + share + logHeld(tallyOf(expected, reading.rightWay));
      return [{ variants, expected, log }];
    }),
  );
}

function bestOfEach(ranked: readonly Hypothesis[]): Hypothesis[] {
  const seen = new Set<ErrorPattern>();
  return ranked.filter(({ variants: [variant] }) => {
    const isFirst = !seen.has(variant!.pattern);
    seen.add(variant!.pattern);
    return isFirst;
  });
}

function judged(
  reading: Reading,
  named: readonly Hypothesis[],
  unnamed: number,
): Omit<Explanation, 'notTested'> {
  const all = logSum([unnamed, ...named.map(({ log }) => log)]);
  const chance = (log: number) => Math.exp(log - all);
  const best = named.reduce((most, each) => (each.log > most.log ? each : most));
  const regular = chance(unnamed) > CERTAIN;
  if (best.variants.length > 0 && !fits(reading, best)) return { reported: [], unnamed: true };
  const reported = best.variants.flatMap((variant) => {
    const ids = rivalsOf(reading, best, variant, named);
    const posterior = named
      .filter(({ variants }) => variants.some(({ pattern }) => ids.includes(pattern.id)))
      .reduce((sum, { log }) => sum + chance(log), 0);
    const steps = stepsOf(bearings(reading, best.variants, variant).filter(({ held }) => held));
    return posterior > CERTAIN && recurs(steps) ? [{ ids, posterior, steps }] : [];
  });
  return { reported, unnamed: regular };
}

/** A pattern is held nearly always, and little else is wrong: own proposals. */
const HELD = 0.92;
const ELSE_WRONG = 0.08;
const DOUBTFUL = 0.01;

/** Whether the patterns are held throughout and leave no more than slips: else they only look like it. */
function fits(reading: Reading, best: Hypothesis): boolean {
  const throughout = best.variants.every((variant) => {
    const decisions = bearings(reading, best.variants, variant);
    const missed = decisions.filter(({ held }) => !held).length;
    return atLeast(missed, decisions.length, 1 - HELD) > DOUBTFUL;
  });
  const all = best.expected.reduce((sum, own) => sum + own.size, 0);
  return throughout && atLeast(wrongIn(best.expected).length, all, ELSE_WRONG) > DOUBTFUL;
}

/** The pattern and those that would have had the very same things done. */
function rivalsOf(
  { expectedOf }: Reading,
  best: Hypothesis,
  variant: Variant,
  named: readonly Hypothesis[],
): string[] {
  const others = best.variants.filter((each) => each !== variant);
  const ids = [variant.pattern.id];
  for (const { variants, expected, log } of named) {
    const [rival] = variants;
    if (variants.length !== 1 || ids.includes(rival!.pattern.id)) continue;
    if (others.length === 0 && log < best.log - 20) continue;
    const together = others.length === 0 ? expected : expectedOf([...others, rival!]);
    if (differences(together, best.expected).length === 0) ids.push(rival!.pattern.id);
  }
  return ids;
}
