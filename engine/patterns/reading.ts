import { type Beliefs, believed, holdingBoth, RIGHT_WAY } from '../pupils/beliefs.ts';
import type { DoneWork } from './done.ts';
import type { Expectation } from './evidence/evidence.ts';
import { evidenceOf } from './evidence/index.ts';
import type { Expected } from './likelihood.ts';
import type { ErrorPattern } from './pattern.ts';

/** One way to hold a pattern: a family has one for each parameter. */
export interface Variant {
  readonly pattern: ErrorPattern;
  readonly beliefs: Beliefs;
}

/** A child's works, read once; every belief is held against the same decisions. */
export interface Reading {
  readonly works: readonly DoneWork[];
  readonly rightWay: Expected;
  readonly expectedOf: (variants: readonly Variant[]) => Expected;
}

export function readWorks(works: readonly DoneWork[]): Reading {
  const evidence = works.map((work) => ({ stage: work.problem.stage, of: evidenceOf(work) }));
  const expectedOf = (variants: readonly Variant[]) => {
    const expected = new Map<string, Expectation>();
    for (const [index, { stage, of }] of evidence.entries()) {
      const held = variants.filter(({ pattern }) => pattern.stages.includes(stage));
      for (const each of of(beliefsOf(held))) expected.set(`${index}/${each.key}`, each);
    }
    return expected;
  };
  return { works, rightWay: expectedOf([]), expectedOf };
}

function beliefsOf(variants: readonly Variant[]): Beliefs {
  return variants.reduce<Beliefs>((held, { beliefs }) => holdingBoth(held, beliefs), RIGHT_WAY);
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

/** Whether a fact that is believed otherwise is met often enough. */
function comesUp(beliefs: Beliefs, facts: readonly Facts[]): boolean {
  const met = facts.map(
    (own) => own.filter(([a, b]) => believed(beliefs, 'fact', { a, b }, a * b) !== a * b).length,
  );
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

/** The different steps of the keys, in order of work. */
export function stepsOf(expected: Expected, keys: readonly string[]): StepOfWork[] {
  const steps = new Map<string, StepOfWork>();
  for (const key of keys) {
    const work = Number(key.slice(0, key.indexOf('/')));
    const { step } = expected.get(key)!;
    steps.set(`${work}/${step}`, { work, step });
  }
  return [...steps.values()];
}

export function recurs(steps: readonly StepOfWork[]): boolean {
  return (
    steps.length >= LEAST_STEPS && new Set(steps.map(({ work }) => work)).size >= LEAST_PROBLEMS
  );
}

/** Where the two would have had different things done. */
export function differences(one: Expected, other: Expected): string[] {
  return [...one.keys()].filter(
    (key) => one.get(key)!.expected !== (other.get(key)?.expected ?? null),
  );
}

/** Where the works are as one of the held patterns says, and as nothing else that is held says. */
export function supportIn(
  works: readonly DoneWork[],
  held: readonly Variant[],
  one: Variant,
): StepOfWork[] {
  return supportOf(readWorks(works), held, one);
}

export function supportOf(
  { expectedOf }: Reading,
  held: readonly Variant[],
  one: Variant,
): StepOfWork[] {
  const expected = expectedOf(held);
  const without = expectedOf(held.filter((each) => each !== one));
  const keys = differences(expected, without).filter((key) => {
    const { given, expected: due } = expected.get(key)!;
    return given === due;
  });
  return stepsOf(expected, keys);
}
