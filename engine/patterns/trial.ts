import { type Compared, type Deviations, deviationsOf } from './compared.ts';
import type { Tally } from './likelihood.ts';
import { bearingIn, type Memory } from './memory.ts';
import type { Reading } from './reading.ts';
import { LEAST_PROBLEMS, LEAST_STEPS, type ListedVariant } from './variants.ts';

/** What came of a pattern alone, as far as it was worth looking. */
export interface Trial {
  readonly variant: ListedVariant;
  /** null: the child did the right thing so often where it errs that it is not held. */
  readonly tally: Tally | null;
  /** Whether the works could have shown it. */
  readonly tested: boolean;
}

/** So many times right where the pattern errs, and twice as many more as it was held, are no lapses. */
const TOO_MANY_LAPSES = 6;

const NOT_TRIED = 0;
const TRIED = 1;
const TESTED = 2;
const DROPPED = 3;

/** All trials at once, each number by the variant's place in its catalogue. */
interface Course {
  /** One of the four above. */
  readonly state: Uint8Array;
  /** What the tally has more than the right way's. */
  readonly plain: Int32Array;
  readonly held: Int32Array;
  readonly lapsed: Int32Array;
  readonly other: Int32Array;
  readonly choices: Float64Array;
  /** Of those not tested yet: steps at which something else was due than the right way has it, works with such steps. */
  readonly steps: Int32Array;
  readonly works: Int32Array;
  /** The steps in the work that is gone through, where there are any. */
  readonly inWork: Map<number, string[]>;
}

function courseOf(variants: readonly ListedVariant[], all: number): Course {
  const state = new Uint8Array(all);
  for (const { at } of variants) state[at] = TRIED;
  return {
    state,
    plain: new Int32Array(all),
    held: new Int32Array(all),
    lapsed: new Int32Array(all),
    other: new Int32Array(all),
    choices: new Float64Array(all),
    steps: new Int32Array(all),
    works: new Int32Array(all),
    inWork: new Map(),
  };
}

/** The works are gone through one by one; a pattern that is plainly not held is dropped. */
export function tryOut(
  { strands, total }: Reading,
  variants: readonly ListedVariant[],
  memory: Memory,
): Trial[] {
  const course = courseOf(variants, memory.variants.length);
  for (const [index, { work, compared }] of strands.entries()) {
    for (const each of compared) take(course, each.deviations ?? goneThrough(memory, each));
    if (strands[index + 1]?.work !== work) endWork(course);
  }
  return variants.map((variant) => trialOf(course, total, variant));
}

function goneThrough(memory: Memory, compared: Compared): Deviations {
  return deviationsOf(compared, bearingIn(memory, compared));
}

function take(
  course: Course,
  { variants, plain, held, lapsed, other, choices, steps }: Deviations,
): void {
  for (let index = 0; index < variants.length; index += 1) {
    const at = variants[index]!;
    const state = course.state[at]!;
    if (state === NOT_TRIED || state === DROPPED) continue;
    course.plain[at]! += plain[index]!;
    course.held[at]! += held[index]!;
    course.lapsed[at]! += lapsed[index]!;
    course.other[at]! += other[index]!;
    course.choices[at]! += choices[index]!;
    if (state === TRIED) noteSteps(course, at, steps[index]!);
  }
}

function noteSteps({ inWork }: Course, at: number, steps: readonly string[]): void {
  if (steps.length === 0) return;
  const own = inWork.get(at);
  if (own === undefined) inWork.set(at, [...steps]);
  else for (const step of steps) if (!own.includes(step)) own.push(step);
}

function endWork({ state, held, lapsed, steps, works, inWork }: Course): void {
  for (const [at, own] of inWork) {
    steps[at]! += own.length;
    works[at]! += 1;
    if (steps[at]! >= LEAST_STEPS && works[at]! >= LEAST_PROBLEMS) state[at] = TESTED;
  }
  inWork.clear();
  for (let at = 0; at < state.length; at += 1) {
    const isTooMany = lapsed[at]! >= TOO_MANY_LAPSES + 2 * held[at]!;
    if (isTooMany && state[at] === TESTED) state[at] = DROPPED;
  }
}

function trialOf(course: Course, total: Tally, variant: ListedVariant): Trial {
  const { at } = variant;
  const state = course.state[at]!;
  if (state === DROPPED) return { variant, tally: null, tested: true };
  const tally: Tally = {
    plain: total.plain + course.plain[at]!,
    held: total.held + course.held[at]!,
    lapsed: total.lapsed + course.lapsed[at]!,
    other: total.other + course.other[at]!,
    choices: total.choices + course.choices[at]!,
  };
  return { variant, tally, tested: state === TESTED };
}
