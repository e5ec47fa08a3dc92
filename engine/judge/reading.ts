import type { ActionOf } from '../mat/action.ts';
import { PRODUCT } from '../mat/sheet.ts';
import { noted, withReadings } from './changes.ts';
import { finding, isOver, placed, sceneWith } from './ledger.ts';
import { type Reading, reading } from './product.ts';
import type { Aspect, Finding, Ledger, Moment, Note, Plan, Scene } from './scene.ts';

function digitAt({ position }: Scene, index: number): number | undefined {
  return position.paper.lines[PRODUCT]?.[index];
}

/** The digit's own step; a digit beyond the true product belongs to the highest. */
function readStep(plan: Plan, index: number): number {
  const nearest = Math.min(index, plan.product.length - 1);
  return plan.tables.read[nearest] ?? -1;
}

function isDue({ ways }: Reading, index: number, digit: number): boolean {
  for (let way = 0; way < ways.length; way += 1) {
    if ((ways[way]![index] ?? 0) === digit) return true;
  }
  return false;
}

const note: Note<ActionOf<'write'>> = (before, after, action) => {
  const { plan, ledger } = before;
  if ('square' in action || action.line !== 'product') return { ledger };
  const index = action.place - plan.problem.mat.origin;
  const scene = sceneWith(before, after);
  const own = reading(scene);
  const step = readStep(plan, index);
  const due = own.bottom[index] ?? null;
  if (own.ready <= index) return noted(ledger, step, 'neutral', action.digit, due);
  if (!isDue(own, index, action.digit)) return noted(ledger, step, 'wrong', action.digit, due);
  const follows = action.digit !== (plan.product[index] ?? 0);
  const next = latched(ledger, index, action.digit, follows);
  return noted(next, step, follows ? 'follows' : 'right', action.digit, due);
};

function latched(ledger: Ledger, index: number, given: number, follows: boolean): Ledger {
  return withReadings(ledger, { read: placed(ledger.readings.read, index, { given, follows }) });
}

function findingOf(scene: Scene, moment: Moment, own: Reading, index: number): Finding {
  const { plan, ledger } = scene;
  const digit = digitAt(scene, index);
  const truth = plan.product[index] ?? 0;
  const due = own.bottom[index] ?? null;
  if (digit === undefined) return unwritten(scene, moment, own, index);
  const before = ledger.readings.read[index];
  if (before?.given === digit) return finding('right', before.follows, digit, due);
  if (!isOver(moment) && own.ready <= index) return finding('none', false, digit, null);
  return finding(isDue(own, index, digit) ? 'right' : 'wrong', digit !== truth, digit, due);
}

function unwritten(scene: Scene, moment: Moment, own: Reading, index: number): Finding {
  const { plan } = scene;
  const truth = plan.product[index];
  const due = own.bottom[index] ?? null;
  if (!isOver(moment)) return finding('none', false, null, null);
  const nothingDue = own.ways.some((way) => index >= way.length) || emptyMat(scene, own);
  if (nothingDue) return finding('right', truth !== undefined, null, null);
  if (leftOut(scene, own, index)) return finding('right', false, null, 0);
  return finding('none', false, null, due ?? 0);
}

/** A mat that holds nothing where the true product is more: the lone 0 need not be written. */
function emptyMat({ plan }: Scene, own: Reading): boolean {
  const nothing = own.ways.every((way) => way.length === 1 && way[0] === 0);
  return nothing && !(plan.product.length === 1 && plan.product[0] === 0);
}

/** Zeros at the end, after the product's point, may be left out together. */
function leftOut(scene: Scene, own: Reading, index: number): boolean {
  if (scene.plan.problem.mat.origin + index >= 0) return false;
  for (let lower = 0; lower <= index; lower += 1) {
    if (digitAt(scene, lower) !== undefined || !isDue(own, lower, 0)) return false;
  }
  return true;
}

/** How many zeros at the end the child left out: the point moves along with them. */
export function zerosLeftOut(scene: Scene): number {
  const own = reading(scene);
  let count = 0;
  while (leftOut(scene, own, count)) count += 1;
  return count;
}

function assess(scene: Scene, moment: Moment, findings: Finding[]): void {
  // The finish of a row asks nothing of the product.
  if (moment.at === 'row') return;
  const { plan } = scene;
  const own = reading(scene);
  for (let index = 0; index < plan.product.length; index += 1) {
    findings[readStep(plan, index)] = findingOf(scene, moment, own, index);
  }
  const highest = highestBeyond(scene, own);
  for (let index = plan.product.length; index <= highest; index += 1) {
    const found = findingOf(scene, moment, own, index);
    const step = readStep(plan, index);
    const worse = found.grade === 'wrong' || (found.grade === 'none' && isOver(moment));
    if (worse && findings[step]!.grade === 'right') findings[step] = found;
  }
}

/** The highest place where anything is written or due; above it nothing can be amiss. */
function highestBeyond({ plan, position }: Scene, { ways }: Reading): number {
  const digits = position.paper.lines[PRODUCT];
  let highest = plan.rows + plan.columns;
  while (digits?.[highest] === undefined && highest >= 0) {
    if (ways.some((way) => way.length > highest)) break;
    highest -= 1;
  }
  return highest;
}

function latch(scene: Scene, moment: Moment): Ledger {
  const digits = scene.position.paper.lines[PRODUCT];
  if (digits === undefined) return scene.ledger;
  const own = reading(scene);
  let { ledger } = scene;
  for (let index = 0; index < digits.length; index += 1) {
    const digit = digits[index];
    if (digit === undefined || !isDue(own, index, digit)) continue;
    if (!isOver(moment) && own.ready <= index) continue;
    if (ledger.readings.read[index]?.given === digit) continue;
    ledger = latched(ledger, index, digit, digit !== (scene.plan.product[index] ?? 0));
  }
  return ledger;
}

/** The product is read from the mat and written once, a step a digit. */
export const productLine: Aspect = {
  steps: (plan) =>
    plan.product.map((_, index) => ({
      id: `read:${plan.problem.mat.origin + index}`,
      skill: 'reading' as const,
    })),
  notes: { write: note },
  latch,
  assess,
};
