import type { ActionOf, Line } from '../../mat/action.ts';
import { isOver, sceneWith } from '../ledger.ts';
import { remembered } from '../memo.ts';
import type { Aspect, BarePlan, Finding, Moment, Note, Noted, Plan, Scene } from '../scene.ts';
import { atLeastOne, copiedColumns, sumColumns } from './columns.ts';
import { memoryOf, withLatches } from './kept-line.ts';
import type { LineReading, LineSpec } from './line-reading.ts';
import { holdsDigits } from './lines.ts';
import { compareReadings, digitStepOf, readLine } from './reading-line.ts';
import { sumStep } from './row-steps.ts';
import { digitFinding, markFaults } from './rows-written.ts';

/** By place from the origin: the sum, and of how many digits. */
export type Sums = readonly { readonly base: number; readonly reaching: number }[];

/** What is added up for the product, by place from the origin. */
export interface Addends {
  readonly applies: (plan: BarePlan) => boolean;
  readonly sums: (scene: Scene) => Sums;
  /** So many places, from the origin, are complete. */
  readonly ready: (scene: Scene) => number;
}

/** In place of a row. */
const SUM = -1;
const SUM_CARRIES: readonly Line[] = ['carry:product'];

/** The product line against what stands above it; where nothing does, the true product may stand as well. */
export function readSum(source: Addends, scene: Scene, moment: Moment): LineReading {
  const { position, ledger } = scene;
  const { lines } = position.paper;
  const { pens } = ledger;
  const sums = source.sums(scene);
  const ready = source.ready(scene);
  const from = [
    sums,
    ready,
    lines['product'],
    lines['carry:product'],
    pens['product'],
    pens['carry:product'],
    ledger.lines[memoryOf(scene.plan, SUM)],
    scene.claims,
  ];
  const name = isOver(moment) ? 'sum, final' : 'sum';
  return remembered(scene.memo, name, from, () => readSumNow(scene, sums, ready, isOver(moment)));
}

function readSumNow(scene: Scene, sums: Sums, ready: number, final: boolean): LineReading {
  const { plan, position } = scene;
  const blank = sums.every(({ reaching }) => reaching === 0) && holdsDigits(position, 'product');
  const own = sumColumns(sums);
  const columns = [
    isNothing(plan) ? atLeastOne(own) : own,
    ...(blank ? [copiedColumns(plan.product)] : []),
  ];
  const decimals = Math.max(0, -plan.problem.mat.origin);
  return columns
    .map(
      (each): LineSpec => ({
        row: SUM,
        name: 'own',
        line: 'product',
        carries: SUM_CARRIES,
        lowest: 0,
        columns: each,
        progress: { final, ready },
        decimals,
      }),
    )
    .map((spec) => readLine(scene, spec))
    .reduce((one, other) => (compareReadings(other, one) < 0 ? other : one));
}

function isNothing({ product }: Plan): boolean {
  return product.length === 1 && product[0] === 0;
}

function followsIn(plan: Plan) {
  return (column: number, given: number) => given !== (plan.product[column] ?? 0);
}

function assess(source: Addends, scene: Scene, moment: Moment, findings: Finding[]): void {
  const { plan, position } = scene;
  const reading = readSum(source, scene, moment);
  const blank = !holdsDigits(position, 'product');
  for (const column of plan.product.keys()) {
    findings[sumStep(plan, column)] = digitFinding(reading, column, plan.product, blank);
  }
  markFaults(reading.faults, findings);
}

const LINES: readonly Line[] = ['product', 'carry:product'];

type Pen = ActionOf<'write'> | ActionOf<'rub'>;

function noteWith(source: Addends): Note<Pen> {
  return (before, after, action) => {
    const { plan, ledger } = before;
    const scene = sceneWith(before, after);
    if (!source.applies(plan) || !holdsDigits(after, 'product')) return { ledger };
    const reading = readSum(source, scene, { at: 'now' });
    const next = withLatches(scene, reading);
    if (action.do === 'rub' || 'square' in action || !LINES.includes(action.line)) {
      return { ledger: next };
    }
    return { ledger: next, remark: remarkOf(plan, reading, action) };
  };
}

type Remark = NonNullable<Noted['remark']>;

function remarkOf(
  plan: Plan,
  { spec, shift, carried, reads, faults }: LineReading,
  { line, place, digit: given }: Extract<ActionOf<'write'>, { line: Line }>,
): Remark {
  const at = place - plan.problem.mat.origin;
  const isCarry = line !== 'product';
  const column = at - (isCarry ? carried : shift);
  const fault = faults.find((each) => each.at === at && !each.missing && each.given === given);
  if (fault !== undefined) return { step: fault.step, verdict: 'wrong', given, due: fault.due };
  const read = reads[column];
  const step = digitStepOf(plan, spec, column);
  const right = isCarry ? read?.carry === 'right' : read?.mark === 'right';
  const due = (isCarry ? read?.carryDue : read?.due) ?? 0;
  if (read !== undefined && !right) return { step, verdict: 'neutral', given, due };
  const follows = !isCarry && followsIn(plan)(column, given);
  return { step, verdict: follows ? 'follows' : 'right', given, due };
}

/** How many places at the end of the product's decimals are not written: the point may leave them out too. */
export function zerosLeftOut({ spec, shift, reads }: LineReading): readonly number[] {
  if (shift < 0) return [-shift];
  const first = reads.findIndex(({ given }) => given !== null);
  const most = Math.min(Math.max(first, 0), spec.decimals);
  return Array.from({ length: most + 1 }, (_, zeros) => zeros);
}

/** What stands under each other is added up into the product. */
export function summing(source: Addends): Aspect {
  const note = noteWith(source);
  return {
    steps: (plan) =>
      source.applies(plan)
        ? plan.product.map((_, index) => ({
            id: `sum:${plan.problem.mat.origin + index}`,
            skill: 'adding' as const,
          }))
        : [],
    notes: { write: note, rub: note },
    latch: (scene, moment) =>
      source.applies(scene.plan)
        ? withLatches(scene, readSum(source, scene, moment))
        : scene.ledger,
    assess: (scene, moment, findings) => {
      if (source.applies(scene.plan)) assess(source, scene, moment, findings);
    },
  };
}
