import { rightOf } from './compared.ts';
import type { Group } from './evidence/evidence.ts';
import {
  addedUp,
  besideIn,
  exchanged,
  logChoices,
  logHeld,
  logSum,
  logUnnamed,
  type Tally,
} from './likelihood.ts';
import type { ErrorPattern } from './pattern.ts';
import { type Change, comparedOf, type Reading, type StrandRead, tallyWith } from './reading.ts';
import type { Trial } from './trial.ts';
import type { Variant } from './variants.ts';

/** Beliefs before any work is seen. Own proposal: some one in five has a pattern (Cox: 5 to 13 %). */
const PRIOR = { none: 0.75, one: 0.15, two: 0.05, unnamed: 0.05 } as const;
/** A pattern is paired with others only if the child did as it says at least so often. */
const LEAST_HELD = 2;
/** So many patterns are paired with all others. */
const LEADING = 5;
/** Pairs that are further below the best, in ln, change nothing: all that hold its pattern speak for it. */
const FAR_BELOW = 4;

/** Patterns that may be held together, and how what was done stands to them. */
export interface Hypothesis {
  readonly variants: readonly Variant[];
  readonly tally: Tally;
  /** ln of its chance, not normed. */
  readonly log: number;
}

export interface Weighed {
  readonly named: readonly Hypothesis[];
  /** ln of the chance of all that has something unnamed in it. */
  readonly unnamed: number;
}

/** A single pattern, with the ln of its chance before any work is seen but for `PRIOR`. */
interface Candidate extends Hypothesis {
  readonly share: number;
}

/** Slips only, each pattern, pairs, and something unnamed besides. */
export function weigh(reading: Reading, trials: readonly Trial[], patterns: number): Weighed {
  const { total } = reading;
  const none: Hypothesis = {
    variants: [],
    tally: total,
    log: Math.log(PRIOR.none) + logHeld(total),
  };
  const shareOf = sharesOf(trials.map(({ variant }) => variant));
  const singles = trials.flatMap(({ variant, tally }): Candidate[] => {
    if (tally === null) return [];
    const share = shareOf(variant) - Math.log(patterns);
    const log = Math.log(PRIOR.one) + share + logHeld(tally);
    return [{ variants: [variant], tally, share, log }];
  });
  const candidates = singles.filter(({ tally }) => tally.held >= LEAST_HELD);
  const besides = candidates.map(
    ({ share, tally }) => Math.log(PRIOR.one * PRIOR.unnamed) + share + logUnnamed(tally),
  );
  const pairs = pairsOf(reading, [none, ...singles], candidates, patterns);
  return {
    named: [none, ...singles, ...pairs],
    unnamed: logSum([Math.log(PRIOR.unnamed) + logUnnamed(total), ...besides]),
  };
}

/** ln of a variant's part in its family: of those that the works could show, each alike. */
function sharesOf(variants: readonly Variant[]): (variant: Variant) => number {
  const members = new Map<ErrorPattern, number>();
  for (const { pattern } of variants) members.set(pattern, (members.get(pattern) ?? 0) + 1);
  return ({ pattern }) => -Math.log(members.get(pattern)!);
}

/** Two patterns, and what their chance can be at most. */
interface Pair {
  readonly variants: readonly [Variant, Variant];
  readonly prior: number;
  readonly most: number;
}

/** Pairs of which at least one is among the patterns that alone explain most, and that may rival the best. */
function pairsOf(
  reading: Reading,
  found: readonly Hypothesis[],
  candidates: readonly Candidate[],
  patterns: number,
): Hypothesis[] {
  let best = Math.max(...found.map(({ log }) => log));
  const pairs: Hypothesis[] = [];
  for (const { variants, prior, most } of possiblePairs(reading, candidates, patterns)) {
    if (most < best - FAR_BELOW) break;
    const tally = tallyWith(reading, reading.heldBy(variants));
    const log = prior + logHeld(tally);
    best = Math.max(best, log);
    pairs.push({ variants, tally, log });
  }
  return pairs;
}

/** The most promising first. */
function possiblePairs(
  reading: Reading,
  candidates: readonly Candidate[],
  patterns: number,
): Pair[] {
  const prior = Math.log((PRIOR.two * 2) / (patterns * (patterns - 1))) + 2 * Math.log(patterns);
  const leading = leadingOf(candidates);
  const pairs = leading.flatMap((one, index) =>
    candidates.flatMap((other): Pair[] => {
      const variants = [one.variants[0]!, other.variants[0]!] as const;
      if (variants[0].pattern === variants[1].pattern) return [];
      if (leading.slice(0, index).includes(other)) return [];
      const own = prior + one.share + other.share;
      return [{ variants, prior: own, most: own + logHeld(mostOf(reading, one, other)) }];
    }),
  );
  return pairs.sort((one, other) => other.most - one.most);
}

/** The best variant of each pattern, of those that explain most. */
function leadingOf(candidates: readonly Candidate[]): Candidate[] {
  const ranked = [...candidates].sort((one, other) => other.log - one.log);
  const seen = new Set<ErrorPattern>();
  const leading: Candidate[] = [];
  for (const each of ranked) {
    if (leading.length === LEADING) break;
    const { pattern } = each.variants[0]!;
    if (!seen.has(pattern)) leading.push(each);
    seen.add(pattern);
  }
  return leading;
}

/** The tally of two together at its best: where both change one strand, they may make it what was done. */
function mostOf(reading: Reading, one: Hypothesis, other: Hypothesis): Tally {
  const [own, others] = [reading.heldBy(one.variants), reading.heldBy(other.variants)];
  const taken: Tally[] = [];
  const instead: Tally[] = [];
  for (const [at, change] of own) {
    const strand = reading.strands[at]!;
    const beside = others.get(at);
    taken.push(strand.tally);
    instead.push(beside === undefined ? change.tally : mostInStrand(strand, change, beside));
  }
  for (const [at, { tally }] of others) {
    if (own.has(at)) continue;
    taken.push(reading.strands[at]!.tally);
    instead.push(tally);
  }
  return exchanged(reading.total, taken, instead);
}

function mostInStrand(read: StrandRead, one: Change, other: Change): Tally {
  return addedUp(
    comparedOf(read).map((each, at) => mostIn(rightOf(each), one.groups[at]!, other.groups[at]!)),
  );
}

function mostIn(right: Group, one: Group, other: Group): Tally {
  let [plain, held, lapsed, wrong, choices] = [0, 0, 0, 0, 0];
  for (let at = 0; at < one.length; at += 1) {
    const { key, given, expected, among } = one[at]!;
    const usual = besideIn(right, key, at)?.expected ?? null;
    const others = besideIn(other, key, at)?.expected ?? null;
    const bothChange = expected !== usual && others !== usual;
    if (given === usual && (expected === usual || others === usual)) plain += 1;
    else if (given === expected || given === others || bothChange) held += 1;
    else if (given === usual) lapsed += 1;
    else {
      wrong += 1;
      choices += logChoices(among);
    }
  }
  const leftOut = right.filter(({ given }) => given === null).length;
  return { plain, held: held + leftOut, lapsed, other: wrong, choices };
}
