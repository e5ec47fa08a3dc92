import type { Problem } from '../problem.ts';
import { type Beliefs, believed } from '../pupils/beliefs.ts';
import type { DoneWork } from './done.ts';
import type { ErrorPattern } from './pattern.ts';

/** One way to hold a pattern: a family has one for each parameter. */
export interface Variant {
  readonly pattern: ErrorPattern;
  readonly beliefs: Beliefs;
}

/** A variant of a catalogue. */
export interface ListedVariant extends Variant {
  /** Its place among all of them. */
  readonly at: number;
  /** Whether its pattern has other variants. */
  readonly ofFamily: boolean;
}

/** Fewer steps, or all in one problem, may be chance (a rule must recur: sources, C.4). */
export const LEAST_STEPS = 3;
export const LEAST_PROBLEMS = 2;

const variants = new WeakMap<readonly ErrorPattern[], readonly ListedVariant[]>();

/** All variants of a catalogue: the same ones whenever they are asked for. */
export function variantsOf(catalogue: readonly ErrorPattern[]): readonly ListedVariant[] {
  const known = variants.get(catalogue);
  if (known !== undefined) return known;
  const all: ListedVariant[] = [];
  for (const pattern of catalogue) {
    const family = Object.values(pattern.beliefs);
    for (const beliefs of family)
      all.push({ pattern, beliefs, at: all.length, ofFamily: family.length > 1 });
  }
  variants.set(catalogue, all);
  return all;
}

/** How often each fact comes up in a problem, by `10 a + b` with digits a and b. */
type Facts = readonly number[];

const factsMet = new WeakMap<Problem, Facts>();

function factsIn(problem: Problem): Facts {
  const known = factsMet.get(problem);
  if (known !== undefined) return known;
  const facts = Array.from({ length: 100 }, () => 0);
  for (const a of problem.multiplicand.digits)
    for (const b of problem.multiplier.digits) facts[10 * a + b]! += 1;
  factsMet.set(problem, facts);
  return facts;
}

/** Facts as `10 a + b`. */
export const EVERY_FACT: readonly number[] = Array.from({ length: 100 }, (_, fact) => fact);
const wrongFacts = new WeakMap<Beliefs, readonly number[]>();

/** The facts that are believed otherwise. */
export function wrongFactsOf(beliefs: Beliefs): readonly number[] {
  const known = wrongFacts.get(beliefs);
  if (known !== undefined) return known;
  const wrong = EVERY_FACT.filter((fact) => {
    const [a, b] = [Math.floor(fact / 10), fact % 10];
    return believed(beliefs, 'fact', { a, b }, a * b) !== a * b;
  });
  wrongFacts.set(beliefs, wrong);
  return wrong;
}

function timesMet(beliefs: Beliefs, facts: Facts): number {
  let times = 0;
  for (const fact of wrongFactsOf(beliefs)) times += facts[fact]!;
  return times;
}

export function isOfFactsAlone({ beliefs }: Variant): boolean {
  const names = Object.keys(beliefs);
  return names.length === 1 && names[0] === 'fact';
}

/** Whether the pattern has a place at the problem's stage; those about facts alone, where those facts come up. */
export function mayBear(variant: Variant, problem: Problem): boolean {
  if (!variant.pattern.stages.includes(problem.stage)) return false;
  return !isOfFactsAlone(variant) || timesMet(variant.beliefs, factsIn(problem)) > 0;
}

/** What was asked for last: a class works the same problems. */
interface Lately {
  readonly problems: readonly Problem[];
  readonly variants: readonly ListedVariant[];
}

const lately = new WeakMap<readonly ErrorPattern[], Lately>();

/** The variants of the patterns that have a place at the works' stages; of families, those that could show. */
export function variantsFor(
  catalogue: readonly ErrorPattern[],
  works: readonly DoneWork[],
): readonly ListedVariant[] {
  const last = lately.get(catalogue);
  const isSame =
    last?.problems.length === works.length &&
    works.every(({ problem }, at) => problem === last.problems[at]);
  if (last !== undefined && isSame) return last.variants;
  const problems = works.map(({ problem }) => problem);
  const variants = variantsIn(catalogue, problems);
  lately.set(catalogue, { problems, variants });
  return variants;
}

function variantsIn(
  catalogue: readonly ErrorPattern[],
  problems: readonly Problem[],
): readonly ListedVariant[] {
  const stages = new Set(problems.map(({ stage }) => stage));
  const facts = problems.map(factsIn);
  return variantsOf(catalogue).filter(({ pattern, beliefs, ofFamily }) => {
    if (!pattern.stages.some((stage) => stages.has(stage))) return false;
    return !ofFamily || comesUp(beliefs, facts);
  });
}

function comesUp(beliefs: Beliefs, facts: readonly Facts[]): boolean {
  let [times, problems] = [0, 0];
  for (const own of facts) {
    const met = timesMet(beliefs, own);
    times += met;
    if (met > 0) problems += 1;
  }
  return times >= LEAST_STEPS && problems >= LEAST_PROBLEMS;
}
