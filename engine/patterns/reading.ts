import { type Beliefs, holdingBoth, RIGHT_WAY } from '../pupils/beliefs.ts';
import type { DoneWork } from './done.ts';
import type { Answer, EvidencePart, Group } from './evidence/evidence.ts';
import { evidenceOf } from './evidence/index.ts';
import {
  addedUp,
  exchanged,
  type RightAnswers,
  rightAnswersOf,
  type Tally,
  tallyOf,
} from './likelihood.ts';
import {
  type Facts,
  factsIn,
  LEAST_PROBLEMS,
  LEAST_STEPS,
  mayBear,
  type Variant,
} from './variants.ts';

/** A group of decisions, held against what the right way would have had. */
export interface GroupRead {
  readonly group: Group;
  readonly tally: Tally;
}

interface RightGroup extends GroupRead {
  readonly work: number;
  readonly answers: RightAnswers;
}

/** The groups that beliefs have otherwise than the right way, by number. */
export type Changes = ReadonlyMap<number, GroupRead>;

/** A child's works, read once; every belief is held against the same decisions. */
export interface Reading {
  /** All groups of all works, as the right way has them. */
  readonly right: readonly RightGroup[];
  readonly total: Tally;
  /** What is otherwise when these are held together. */
  readonly heldBy: (variants: readonly Variant[]) => Changes;
}

/** A part of one of the works; its groups are numbered from `first` on. */
interface PartRead {
  readonly part: EvidencePart;
  readonly first: number;
  readonly count: number;
  readonly facts: Facts;
  readonly stage: DoneWork['problem']['stage'];
}

const NO_CHANGES: Changes = new Map();

export function readWorks(works: readonly DoneWork[]): Reading {
  const right: RightGroup[] = [];
  const parts = works.flatMap((work, index) => {
    const facts = factsIn(work);
    return evidenceOf(work).map((part): PartRead => {
      const groups = part.expect(RIGHT_WAY);
      const first = right.length;
      for (const group of groups) right.push(rightGroup(index, group));
      return { part, first, count: groups.length, facts, stage: work.problem.stage };
    });
  });
  const alone = new Map<Variant, Changes>();
  const ofOne = (variant: Variant): Changes => {
    const known = alone.get(variant);
    if (known !== undefined) return known;
    const changes = new Map<number, GroupRead>();
    for (const each of parts)
      if (bearsOn(variant, each)) change(changes, right, each, variant.beliefs);
    alone.set(variant, changes);
    return changes;
  };
  const ofSeveral = (variants: readonly Variant[]): Changes => {
    const changes = new Map<number, GroupRead>();
    const beliefs = variants.reduce<Beliefs>(
      (all, each) => holdingBoth(all, each.beliefs),
      RIGHT_WAY,
    );
    for (const each of parts) {
      const bearing = variants.filter((variant) => bearsOn(variant, each));
      if (bearing.length > 1) change(changes, right, each, beliefs);
      if (bearing.length === 1) copy(changes, ofOne(bearing[0]!), each);
    }
    return changes;
  };
  return {
    right,
    total: addedUp(right.map(({ tally }) => tally)),
    heldBy: (variants) => {
      if (variants.length === 0) return NO_CHANGES;
      return variants.length === 1 ? ofOne(variants[0]!) : ofSeveral(variants);
    },
  };
}

function rightGroup(work: number, group: Group): RightGroup {
  const answers = rightAnswersOf(group);
  return { work, group, answers, tally: tallyOf(group, answers) };
}

function bearsOn({ pattern, beliefs }: Variant, { part, facts, stage }: PartRead): boolean {
  return (
    pattern.stages.includes(stage) &&
    part.bears.some((name) => beliefs[name] !== undefined) &&
    mayBear(beliefs, facts)
  );
}

function change(
  changes: Map<number, GroupRead>,
  right: readonly RightGroup[],
  { part, first }: PartRead,
  beliefs: Beliefs,
): void {
  for (const [at, group] of part.expect(beliefs).entries()) {
    const { answers, group: usual } = right[first + at]!;
    if (group === usual || isSame(group, usual)) continue;
    changes.set(first + at, { group, tally: tallyOf(group, answers) });
  }
}

function isSame(one: Group, other: Group): boolean {
  return (
    one.length === other.length &&
    one.every(({ key, given, expected }, at) => {
      const same = other[at]!;
      return key === same.key && given === same.given && expected === same.expected;
    })
  );
}

function copy(changes: Map<number, GroupRead>, from: Changes, { first, count }: PartRead): void {
  for (let at = first; at < first + count; at += 1) {
    const own = from.get(at);
    if (own !== undefined) changes.set(at, own);
  }
}

/** The tally of all works if these groups are otherwise. */
export function tallyWith({ right, total }: Reading, changes: Changes): Tally {
  const without = [...changes.keys()].map((at) => right[at]!.tally);
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
export function stepsOf(decisions: readonly Decision[]): StepOfWork[] {
  const steps = new Map<string, StepOfWork>();
  for (const { work, step } of decisions) steps.set(`${work}/${step}`, { work, step });
  return [...steps.values()];
}

export function recurs(steps: readonly StepOfWork[]): boolean {
  return (
    steps.length >= LEAST_STEPS && new Set(steps.map(({ work }) => work)).size >= LEAST_PROBLEMS
  );
}

/** `held`: done as the first of two expectations has it. */
export interface Decision extends StepOfWork {
  readonly held: boolean;
}

/** Decisions that the one would have otherwise than the other; what the one leaves out counts if it was left out. */
export function differences({ right }: Reading, one: Changes, other: Changes): Decision[] {
  const numbers = [...new Set([...one.keys(), ...other.keys()])].sort((a, b) => a - b);
  return numbers.flatMap((at) => {
    const { work, group } = right[at]!;
    const [own, others] = [one.get(at)?.group ?? group, other.get(at)?.group ?? group];
    return own === others ? [] : differencesIn(work, own, others);
  });
}

function differencesIn(work: number, own: Group, others: Group): Decision[] {
  const answers = new Map<number, Answer>(others.map(({ key, expected }) => [key, expected]));
  const found: Decision[] = [];
  for (const { key, step, given, expected } of own) {
    if (answers.get(key) !== expected) found.push({ work, step, held: given === expected });
    answers.delete(key);
  }
  for (const { key, step, given } of others) {
    if (given === null && answers.has(key)) found.push({ work, step, held: true });
  }
  return found;
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
