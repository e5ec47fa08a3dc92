import { type Beliefs, believed, holdingBoth, RIGHT_WAY } from '../pupils/beliefs.ts';
import type { DoneWork } from './done.ts';
import type { Expectation } from './evidence/evidence.ts';
import { evidenceOf } from './evidence/index.ts';
import type { Expected, ExpectedOfWork } from './likelihood.ts';
import type { ErrorPattern } from './pattern.ts';

/** One way to hold a pattern: a family has one for each parameter. */
export interface Variant {
  readonly pattern: ErrorPattern;
  readonly beliefs: Beliefs;
}

/** A child's works, read once; every belief is held against the same decisions. */
export interface Reading {
  readonly rightWay: Expected;
  readonly expectedOf: (variants: readonly Variant[]) => Expected;
}

export function readWorks(works: readonly DoneWork[]): Reading {
  const read = works.map((work) => {
    const evidence = evidenceOf(work);
    const facts = factsIn(work);
    const { stage } = work.problem;
    const rightWay = byKey(evidence(RIGHT_WAY));
    return (variants: readonly Variant[]): ExpectedOfWork => {
      const held = variants.filter(
        ({ pattern, beliefs }) => pattern.stages.includes(stage) && mayBear(beliefs, facts),
      );
      return held.length === 0 ? rightWay : byKey(evidence(beliefsOf(held)));
    };
  });
  const expectedOf = (variants: readonly Variant[]) => read.map((of) => of(variants));
  return { rightWay: expectedOf([]), expectedOf };
}

function byKey(expectations: readonly Expectation[]): ExpectedOfWork {
  return new Map(expectations.map((each) => [each.key, each]));
}

function beliefsOf(variants: readonly Variant[]): Beliefs {
  return variants.reduce<Beliefs>((held, { beliefs }) => holdingBoth(held, beliefs), RIGHT_WAY);
}

/** A belief about facts alone bears on nothing where those facts do not come up. */
function mayBear(beliefs: Beliefs, facts: Facts): boolean {
  const only = Object.keys(beliefs);
  return only.length !== 1 || only[0] !== 'fact' || factsMet(beliefs, facts) > 0;
}

/** The variants of the patterns that have a place at the works' stages; of families, those that could show. */
export function variantsFor(
  catalogue: readonly ErrorPattern[],
  works: readonly DoneWork[],
): readonly Variant[] {
  const stages = new Set(works.map(({ problem }) => problem.stage));
  const facts = works.map(factsIn);
  return catalogue
    .filter((pattern) => pattern.stages.some((stage) => stages.has(stage)))
    .flatMap((pattern) => {
      const all = Object.values(pattern.beliefs).map((beliefs) => ({ pattern, beliefs }));
      return all.length === 1 ? all : all.filter(({ beliefs }) => comesUp(beliefs, facts));
    });
}

type Facts = readonly (readonly [a: number, b: number])[];

function factsIn({ problem }: DoneWork): Facts {
  return problem.multiplicand.digits.flatMap((a) =>
    problem.multiplier.digits.map((b): readonly [number, number] => [a, b]),
  );
}

/** How often a fact is met that is believed otherwise. */
function factsMet(beliefs: Beliefs, facts: Facts): number {
  const wrong = facts.filter(([a, b]) => believed(beliefs, 'fact', { a, b }, a * b) !== a * b);
  return wrong.length;
}

function comesUp(beliefs: Beliefs, facts: readonly Facts[]): boolean {
  const met = facts.map((own) => factsMet(beliefs, own));
  const all = met.reduce((sum, count) => sum + count, 0);
  return all >= LEAST_STEPS && met.filter((count) => count > 0).length >= LEAST_PROBLEMS;
}

/** Fewer steps, or all in one problem, may be chance (a rule must recur: sources, C.4). */
export const LEAST_STEPS = 3;
const LEAST_PROBLEMS = 2;

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

/** Decisions that the one would have otherwise than the other; what is in one only: nothing was done, and nothing was due there. */
export function differences(one: Expected, other: Expected): Decision[] {
  return one.flatMap((own, work) => {
    const others = other[work]!;
    if (own === others) return [];
    const found: Decision[] = [];
    for (const [key, { step, given, expected }] of own) {
      if (others.get(key)?.expected === expected) continue;
      found.push({ work, step, held: given === expected });
    }
    for (const [key, { step }] of others) if (!own.has(key)) found.push({ work, step, held: true });
    return found;
  });
}

/** Decisions where the works are as the one of the held patterns says, and as nothing else that is held says. */
export function bearings(
  { expectedOf }: Reading,
  held: readonly Variant[],
  one: Variant,
): Decision[] {
  return differences(expectedOf(held), expectedOf(held.filter((each) => each !== one)));
}

export function supportIn(
  works: readonly DoneWork[],
  held: readonly Variant[],
  one: Variant,
): StepOfWork[] {
  return stepsOf(bearings(readWorks(works), held, one).filter((decision) => decision.held));
}
