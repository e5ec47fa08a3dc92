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
  /** What is otherwise in one of the works when this alone is held. */
  readonly heldIn: (work: number, variant: Variant) => Changes;
}

/** A part of a work; its groups are numbered from `first` on. */
interface PartRead {
  readonly part: EvidencePart;
  readonly first: number;
  readonly count: number;
}

const NO_CHANGES: Changes = new Map();

export function readWorks(works: readonly DoneWork[]): Reading {
  const right: RightGroup[] = [];
  const facts = works.map(factsIn);
  const partsOf = works.map((work, index) =>
    evidenceOf(work).map((part): PartRead => {
      const groups = part.expect(RIGHT_WAY);
      const first = right.length;
      for (const group of groups) right.push(rightGroup(index, group));
      return { part, first, count: groups.length };
    }),
  );
  const alone = works.map(() => new Map<Variant, Changes>());
  const heldIn = (work: number, variant: Variant): Changes => {
    const known = alone[work]!.get(variant);
    if (known !== undefined) return known;
    if (!mayBearOn(variant, works[work]!, facts[work]!)) return NO_CHANGES;
    const changes = new Map<number, GroupRead>();
    for (const part of partsOf[work]!)
      if (bearsOn(variant, part)) change(changes, right, part, variant.beliefs);
    alone[work]!.set(variant, changes);
    return changes;
  };
  const heldTogether = (variants: readonly Variant[]): Changes => {
    const changes = new Map<number, GroupRead>();
    const beliefs = variants.reduce<Beliefs>(
      (all, each) => holdingBoth(all, each.beliefs),
      RIGHT_WAY,
    );
    for (const [work, parts] of partsOf.entries()) {
      const own = variants.filter((each) => mayBearOn(each, works[work]!, facts[work]!));
      for (const part of parts) {
        const bearing = own.filter((variant) => bearsOn(variant, part));
        if (bearing.length > 1) change(changes, right, part, beliefs);
        if (bearing.length === 1) copy(changes, heldIn(work, bearing[0]!), part);
      }
    }
    return changes;
  };
  const heldAlone = (variant: Variant): Changes =>
    new Map(works.flatMap((_, work) => [...heldIn(work, variant)]));
  return {
    right,
    total: addedUp(right.map(({ tally }) => tally)),
    heldIn,
    heldBy: (variants) => {
      const [first, ...more] = variants;
      if (first === undefined) return NO_CHANGES;
      return more.length === 0 ? heldAlone(first) : heldTogether(variants);
    },
  };
}

function rightGroup(work: number, group: Group): RightGroup {
  const answers = rightAnswersOf(group);
  return { work, group, answers, tally: tallyOf(group, answers) };
}

function mayBearOn({ pattern, beliefs }: Variant, { problem }: DoneWork, facts: Facts): boolean {
  return pattern.stages.includes(problem.stage) && mayBear(beliefs, facts);
}

function bearsOn({ beliefs }: Variant, { part }: PartRead): boolean {
  return part.bears.some((name) => beliefs[name] !== undefined);
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
