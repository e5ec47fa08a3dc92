import {
  type Bearing,
  type Compared,
  type Deviations,
  deviationsBeyond,
  deviationsOf,
  onlyStepOf,
  toGoThrough,
} from './compared.ts';
import type { Effect } from './effect.ts';
import type { Tally } from './likelihood.ts';
import { bearingIn, type Memory } from './memory.ts';
import { comparedOf, type Reading, type StrandRead } from './reading.ts';
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

const TRIED = 1;
const TESTED = 2;
const DROPPED = 3;

/** All trials at once, each number by the variant's place in its catalogue. */
interface Course {
  /** 0: not tried; else one of the three above. */
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
  readonly inWork: InWork;
}

/** What was met in the work that is gone through. */
interface InWork {
  readonly met: Met[];
  readonly byEffect: Map<Effect, Met>;
  /** By variant that is not tested yet: the steps, where there are any, as many as are asked for. */
  readonly steps: (readonly string[] | undefined)[];
  /** The variants that have some. */
  readonly noted: number[];
}

interface Met {
  readonly effect: Effect;
  times: number;
  /** Whether some of its variants are not tested yet. */
  readonly isTried: boolean;
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
    inWork: { met: [], byEffect: new Map(), steps: new Array(all).fill(undefined), noted: [] },
  };
}

/** The works are gone through one by one; a pattern that is plainly not held is dropped. */
export function tryOut(
  { strands, total }: Reading,
  variants: readonly ListedVariant[],
  memory: Memory,
): Trial[] {
  const course = courseOf(variants, memory.variants.length);
  const isHeld = ({ at }: ListedVariant) => isOpen(course, at);
  for (let index = 0; index < strands.length; index += 1) {
    const read = strands[index]!;
    if (!isSettled(course, memory, read))
      for (const each of comparedOf(read)) meetAll(course, memory, each, isHeld);
    if (strands[index + 1]?.work !== read.work) endWork(course);
  }
  return variants.map((variant) => trialOf(course, total, variant));
}

/** Whether it is tried and not dropped. */
function isOpen({ state }: Course, at: number): boolean {
  return state[at] === TRIED || state[at] === TESTED;
}

/**
 * Whether no variant that bears on a strand is open. Of single decisions, of which a work has most,
 * that is soon so; where it hangs on the facts that come up it would take longer to see than it saves.
 */
function isSettled(
  course: Course,
  memory: Memory,
  { problem, topic, compared }: StrandRead,
): boolean {
  if (compared !== null) return false;
  return !bearingIn(memory, problem, topic, null).variants.some(({ at }) => isOpen(course, at));
}

function meetAll(
  course: Course,
  memory: Memory,
  compared: Compared,
  isAsked: (variant: ListedVariant) => boolean,
): void {
  const core = compared.core ?? compared;
  const known = core.deviations ?? toGoThrough(core, bearingOf(memory, core));
  const own = known.left.length === 0 ? known : deviationsOf(core, known, isAsked);
  meet(course, core, own);
  if (core !== compared) meet(course, compared, deviationsBeyond(compared, own));
}

function bearingOf(memory: Memory, { problem, sighting: { topic, seen } }: Compared): Bearing {
  return bearingIn(memory, problem, topic, seen);
}

function meet(course: Course, compared: Compared, { effect, steps }: Deviations): void {
  if (effect.length === 0) return;
  const { inWork, state } = course;
  let met = inWork.byEffect.get(effect);
  if (met === undefined) {
    const isTried = effect.some(({ variant }) => state[variant.at] === TRIED);
    met = { effect, times: 0, isTried };
    inWork.byEffect.set(effect, met);
    inWork.met.push(met);
  }
  met.times += 1;
  if (!met.isTried) return;
  const all = steps === null ? [onlyStepOf(compared)] : null;
  for (let index = 0; index < effect.length; index += 1) {
    const { at } = effect[index]!.variant;
    if (state[at] === TRIED) noteSteps(course, at, all ?? steps![index]!);
  }
}

function noteSteps({ inWork }: Course, at: number, steps: readonly string[]): void {
  if (steps.length === 0) return;
  const own = inWork.steps[at];
  if (own === undefined) inWork.noted.push(at);
  else if (own.length >= LEAST_STEPS) return;
  inWork.steps[at] = own === undefined ? steps : withSteps(own, steps);
}

function withSteps(own: readonly string[], steps: readonly string[]): readonly string[] {
  const more = steps.filter((step) => !own.includes(step));
  return more.length === 0 ? own : [...own, ...more];
}

function endWork(course: Course): void {
  const { state, held, lapsed, steps, works, inWork } = course;
  for (const { effect, times } of inWork.met) take(course, effect, times);
  for (const at of inWork.noted) {
    steps[at]! += inWork.steps[at]!.length;
    inWork.steps[at] = undefined;
    works[at]! += 1;
    if (steps[at]! >= LEAST_STEPS && works[at]! >= LEAST_PROBLEMS) state[at] = TESTED;
  }
  inWork.met.length = 0;
  inWork.byEffect.clear();
  inWork.noted.length = 0;
  for (let at = 0; at < state.length; at += 1) {
    const isTooMany = lapsed[at]! >= TOO_MANY_LAPSES + 2 * held[at]!;
    if (isTooMany && state[at] === TESTED) state[at] = DROPPED;
  }
}

/** What becomes of those that are not tried, or dropped, is never looked at. */
function take(course: Course, effect: Effect, times: number): void {
  for (const { variant, gain } of effect) {
    const { at } = variant;
    course.plain[at]! += times * gain.plain;
    course.held[at]! += times * gain.held;
    course.lapsed[at]! += times * gain.lapsed;
    course.other[at]! += times * gain.other;
    course.choices[at]! += times * gain.choices;
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
