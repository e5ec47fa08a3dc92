import { atLeast } from './binomial.ts';
import { CATALOGUE } from './catalogue/index.ts';
import type { DoneWork } from './done.ts';
import { logSum, type Tally } from './likelihood.ts';
import { memoryOf } from './memory.ts';
import type { ErrorPattern } from './pattern.ts';
import {
  bearings,
  type Changes,
  differences,
  type Reading,
  readWorks,
  recurs,
  type StepOfWork,
  stepsOf,
  tallyWith,
  wrongIn,
} from './reading.ts';
import { type Trial, tryOut } from './trial.ts';
import { type Variant, variantsFor, variantsOf } from './variants.ts';
import { type Hypothesis, type Weighed, weigh } from './weigh.ts';

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

const CERTAIN = 0.9;

/**
 * Which error patterns explain the works of one child, by all that was done in them. Works may be of
 * different stages; patterns are held to the works of their own stages. Posterior over slips only,
 * each pattern, each pair, and something unnamed.
 */
export function explain(
  works: readonly DoneWork[],
  catalogue: readonly ErrorPattern[] = CATALOGUE,
): Explanation {
  const memory = memoryOf(variantsOf(catalogue));
  const reading = readWorks(works, memory);
  const trials = tryOut(reading, variantsFor(catalogue, works), memory);
  const notTested = untested(trials);
  if (!recurs(stepsOf(wrongIn(reading)))) return { reported: [], unnamed: false, notTested };
  const weighed = weigh(reading, trials, catalogue.length);
  return { ...judged(reading, weighed), notTested };
}

function untested(trials: readonly Trial[]): string[] {
  const tested = new Map<string, boolean>();
  for (const { variant, tested: is } of trials) {
    const { id } = variant.pattern;
    tested.set(id, is || tested.get(id) === true);
  }
  return [...tested].flatMap(([id, is]) => (is ? [] : [id]));
}

function judged(reading: Reading, { named, unnamed }: Weighed): Omit<Explanation, 'notTested'> {
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
function fits(reading: Reading, { variants, tally }: Hypothesis): boolean {
  const throughout = variants.every((variant) => {
    const decisions = bearings(reading, variants, variant);
    const missed = decisions.filter(({ held }) => !held).length;
    return atLeast(missed, decisions.length, 1 - HELD) > DOUBTFUL;
  });
  const wrong = tally.lapsed + tally.other;
  const all = tally.plain + tally.held + wrong;
  return throughout && atLeast(wrong, all, ELSE_WRONG) > DOUBTFUL;
}

/** The pattern and those that would have had the very same things done. */
function rivalsOf(
  reading: Reading,
  best: Hypothesis,
  variant: Variant,
  named: readonly Hypothesis[],
): string[] {
  const others = best.variants.filter((each) => each !== variant);
  const beside = reading.heldBy(others);
  const alone = reading.heldBy([variant]);
  const ids = [variant.pattern.id];
  for (const { variants, tally } of named) {
    const [rival] = variants;
    if (variants.length !== 1 || ids.includes(rival!.pattern.id)) continue;
    if (others.length === 0 && !isAsLikely(tally, best.tally)) continue;
    if (!isAlikeBeside(reading, reading.heldBy(variants), alone, beside)) continue;
    const together = reading.heldBy([...others, rival!]);
    if (isAsLikely(tallyWith(reading, together), best.tally)) {
      const differ = differences(reading, together, reading.heldBy(best.variants));
      if (differ.length === 0) ids.push(rival!.pattern.id);
    }
  }
  return ids;
}

/** A row that is read from another place on may have the same digits due, and be held to them less well. */
function isAsLikely(one: Tally, other: Tally): boolean {
  return one.held === other.held && one.lapsed === other.lapsed && one.other === other.other;
}

/** Whether two change the same where nothing else does: else they differ beside it, too. */
function isAlikeBeside(reading: Reading, one: Changes, other: Changes, beside: Changes): boolean {
  const free = (changes: Changes) => new Map([...changes].filter(([at]) => !beside.has(at)));
  return differences(reading, free(one), free(other)).length === 0;
}
