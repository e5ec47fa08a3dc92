import type { Problem } from '../problem.ts';
import { type Beliefs, holdingBoth, RIGHT_WAY } from '../pupils/beliefs.ts';
import {
  bearsOn,
  type Compared,
  compareEach,
  type Deviations,
  groupOf,
  rightOf,
  tallyOfEach,
  wrongIn as wrongStepsIn,
} from './compared.ts';
import type { DoneWork } from './done.ts';
import type { Decisions, Group, Strand, Topic } from './evidence/evidence.ts';
import { evidenceOf } from './evidence/index.ts';
import { addedUp, exchanged, type Tally, tallyOf } from './likelihood.ts';
import { comparedIn, emptyMemory, type Memory } from './memory.ts';
import { LEAST_PROBLEMS, LEAST_STEPS, mayBear, type Variant } from './variants.ts';

/** A strand of a work, held against what the right way would have had. */
export interface StrandRead {
  readonly work: number;
  readonly problem: Problem;
  readonly topic: Topic<unknown>;
  readonly tally: Tally;
  readonly strand: Strand;
  /** By sighting; null: not asked for yet. */
  compared: readonly Compared[] | null;
}

export function comparedOf(read: StrandRead): readonly Compared[] {
  read.compared ??= compareEach(read.problem, read.strand as Decisions);
  return read.compared;
}

/** What beliefs have of a strand. */
export interface Change {
  /** By sighting: the right way's own group where they have the same. */
  readonly groups: readonly Group[];
  readonly tally: Tally;
}

/** The strands that beliefs have otherwise than the right way, by number. */
export type Changes = ReadonlyMap<number, Change>;

/** A child's works, read once; every belief is held against the same decisions. */
export interface Reading {
  /** All strands of all works, in order. */
  readonly strands: readonly StrandRead[];
  readonly total: Tally;
  /** What is otherwise when these are held together. */
  readonly heldBy: (variants: readonly Variant[]) => Changes;
}

const NO_CHANGES: Changes = new Map();

/** `memory`: of the variants' catalogue; without it nothing is known of works read before. */
export function readWorks(works: readonly DoneWork[], memory: Memory = emptyMemory([])): Reading {
  const strands: StrandRead[] = [];
  for (const [index, work] of works.entries())
    for (const strand of evidenceOf(work))
      if (!isEmpty(strand)) strands.push(readStrand(memory, work, index, strand));
  const alone = new Map<Variant, Changes>();
  const heldAlone = (variant: Variant): Changes => {
    const known = alone.get(variant);
    if (known !== undefined) return known;
    const changes = changesBy(strands, variant);
    alone.set(variant, changes);
    return changes;
  };
  return {
    strands,
    total: addedUp(strands.map(({ tally }) => tally)),
    heldBy: (variants) => {
      const [first, ...more] = variants;
      if (first === undefined) return NO_CHANGES;
      return more.length === 0 ? heldAlone(first) : changesByAll(strands, variants, heldAlone);
    },
  };
}

function isEmpty(strand: Strand): boolean {
  return ('topic' in strand ? strand.seen : strand).length === 0;
}

function readStrand(
  memory: Memory,
  { problem }: DoneWork,
  work: number,
  strand: Strand,
): StrandRead {
  if ('topic' in strand) {
    const tally = tallyOfEach(problem, strand);
    return { work, problem, topic: strand.topic, tally, strand, compared: null };
  }
  const compared = comparedIn(memory, problem, strand);
  const tally = compared.length === 1 ? compared[0]!.tally : addedUp(compared.map(tallyIn));
  return { work, problem, topic: strand[0]!.topic, tally, strand, compared };
}

function tallyIn({ tally }: Compared): Tally {
  return tally;
}

function isBorneOn({ problem, topic }: StrandRead, variant: Variant): boolean {
  return bearsOn(variant.beliefs, topic) && mayBear(variant, problem);
}

function changesBy(strands: readonly StrandRead[], variant: Variant): Changes {
  const changes = new Map<number, Change>();
  for (const [at, strand] of strands.entries()) {
    if (!isBorneOn(strand, variant)) continue;
    const change = changeOf(strand, (compared) =>
      deviates(compared, variant) ? groupOf(compared, variant.beliefs) : rightOf(compared),
    );
    if (change !== null) changes.set(at, change);
  }
  return changes;
}

/** Whether it may: known where the variant was gone through. */
function deviates(compared: Compared, variant: Variant): boolean {
  const { core } = compared;
  const own = (core ?? compared).deviations;
  if (own === null || isAmong(own.left, variant) || hasGain(own, variant)) return true;
  if (core === null || !isAmong(own.looking, variant)) return false;
  const beyond = compared.deviations;
  return beyond === null || !isAmong(beyond.looking, variant) || hasGain(beyond, variant);
}

function hasGain({ effect }: Deviations, { beliefs }: Variant): boolean {
  return effect.some(({ variant }) => variant.beliefs === beliefs);
}

function isAmong(variants: readonly Variant[], { beliefs }: Variant): boolean {
  return variants.some((variant) => variant.beliefs === beliefs);
}

/** Where only one of them bears it is as that one alone has it. */
function changesByAll(
  strands: readonly StrandRead[],
  variants: readonly Variant[],
  heldAlone: (variant: Variant) => Changes,
): Changes {
  const changes = new Map<number, Change>();
  const beliefs = variants.reduce<Beliefs>(
    (all, each) => holdingBoth(all, each.beliefs),
    RIGHT_WAY,
  );
  for (const [at, strand] of strands.entries()) {
    const [one, ...others] = variants.filter((variant) => isBorneOn(strand, variant));
    if (one === undefined) continue;
    const change =
      others.length === 0
        ? (heldAlone(one).get(at) ?? null)
        : changeOf(strand, (compared) => groupOf(compared, beliefs));
    if (change !== null) changes.set(at, change);
  }
  return changes;
}

/** null: all as the right way has it. */
function changeOf(read: StrandRead, groupBy: (compared: Compared) => Group): Change | null {
  const { tally } = read;
  const compared = comparedOf(read);
  const groups = compared.map(groupBy);
  const without: Tally[] = [];
  const instead: Tally[] = [];
  for (const [at, group] of groups.entries()) {
    const own = compared[at]!;
    if (group === own.right) continue;
    without.push(own.tally);
    instead.push(tallyOf(group, rightOf(own)));
  }
  return without.length === 0 ? null : { groups, tally: exchanged(tally, without, instead) };
}

/** The tally of all works if these strands are otherwise. */
export function tallyWith({ strands, total }: Reading, changes: Changes): Tally {
  const without = [...changes.keys()].map((at) => strands[at]!.tally);
  return exchanged(
    total,
    without,
    [...changes.values()].map(({ tally }) => tally),
  );
}

/** A decision of one of the works. */
export interface StepOfWork {
  readonly work: number;
  readonly step: string;
}

/** The different steps of decisions, in order of work. */
export function stepsOf(decisions: readonly StepOfWork[]): StepOfWork[] {
  const steps = new Map<string, StepOfWork>();
  for (const { work, step } of decisions) steps.set(`${work}/${step}`, { work, step });
  return [...steps.values()];
}

export function recurs(steps: readonly StepOfWork[]): boolean {
  return (
    steps.length >= LEAST_STEPS && new Set(steps.map(({ work }) => work)).size >= LEAST_PROBLEMS
  );
}

/** Decisions that were not taken the right way. */
export function wrongIn({ strands }: Reading): StepOfWork[] {
  const wrong: StepOfWork[] = [];
  for (const read of strands) {
    const { work, tally } = read;
    if (tally.other === 0) continue;
    for (const each of comparedOf(read))
      for (const step of wrongStepsIn(each)) wrong.push({ work, step });
  }
  return wrong;
}

/** `held`: done as the first of two expectations has it. */
export interface Decision extends StepOfWork {
  readonly held: boolean;
}

/** Decisions that the one would have otherwise than the other; what the one leaves out counts if it was left out. */
export function differences({ strands }: Reading, one: Changes, other: Changes): Decision[] {
  const numbers = [...new Set([...one.keys(), ...other.keys()])].sort((a, b) => a - b);
  return numbers.flatMap((at) =>
    differencesIn(strands[at]!, one.get(at)?.groups, other.get(at)?.groups),
  );
}

function differencesIn(
  read: StrandRead,
  one: readonly Group[] | undefined,
  other: readonly Group[] | undefined,
): Decision[] {
  const found: Decision[] = [];
  const leftOut: Decision[] = [];
  const { work } = read;
  for (const [at, each] of comparedOf(read).entries()) {
    const right = rightOf(each);
    const [own, others] = [one?.[at] ?? right, other?.[at] ?? right];
    if (own === others) continue;
    const answers = new Map(others.map((other) => [other.key, other]));
    for (const { key, step, given, expected } of own) {
      if (answers.get(key)?.expected !== expected)
        found.push({ work, step, held: given === expected });
      answers.delete(key);
    }
    for (const { step, given } of answers.values())
      if (given === null) leftOut.push({ work, step, held: true });
  }
  return [...found, ...leftOut];
}

/** Decisions where the works are as the one of the held patterns says, and as nothing else that is held says. */
export function bearings(reading: Reading, held: readonly Variant[], one: Variant): Decision[] {
  const without = held.filter((each) => each !== one);
  return differences(reading, reading.heldBy(held), reading.heldBy(without));
}

export function supportIn(
  works: readonly DoneWork[],
  held: readonly Variant[],
  one: Variant,
): StepOfWork[] {
  return stepsOf(bearings(readWorks(works), held, one).filter((decision) => decision.held));
}
