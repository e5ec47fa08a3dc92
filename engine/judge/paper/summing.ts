import type { ActionOf, Line } from '../../mat/action.ts';
import { isOver, stepOf } from '../ledger.ts';
import type { Aspect, BarePlan, Finding, Moment, Note, Noted, Plan, Scene } from '../scene.ts';
import { atLeastOne, copiedColumns, sumColumns } from './columns.ts';
import { holdsDigits } from './lines.ts';
import {
  compareReadings,
  type LineReading,
  type LineSpec,
  readLine,
  withLatches,
} from './reading-line.ts';
import { digitFinding, markFaults } from './rows-written.ts';

/** What is added up for the product, by place from the origin. */
export interface Addends {
  readonly applies: (plan: BarePlan) => boolean;
  readonly sums: (scene: Scene) => readonly { readonly base: number; readonly reaching: number }[];
  /** So many places, from the origin, are complete. */
  readonly ready: (scene: Scene) => number;
}

function sumStep(plan: Plan, column: number): number {
  const most = Math.min(column, plan.product.length - 1);
  return stepOf(plan, `sum:${plan.problem.mat.origin + most}`);
}

/** The product line against what stands above it; where nothing does, the true product may stand as well. */
export function readSum(source: Addends, scene: Scene, moment: Moment): LineReading {
  const { plan, position } = scene;
  const sums = source.sums(scene);
  const blank = sums.every(({ reaching }) => reaching === 0) && holdsDigits(position, 'product');
  const own = sumColumns(sums);
  const columns = [
    isNothing(plan) ? atLeastOne(own) : own,
    ...(blank ? [copiedColumns(plan.product)] : []),
  ];
  const shared = {
    line: 'product' as const,
    carries: ['carry:product' as const],
    lowest: 0,
    progress: { final: isOver(moment), ready: source.ready(scene) },
    decimals: Math.max(0, -plan.problem.mat.origin),
    digitStep: (column: number) => sumStep(plan, column),
    zeroStep: () => sumStep(plan, 0),
    surplusStep: sumStep(plan, 0),
  };
  return columns
    .map((each): LineSpec => ({ ...shared, name: 'sum', columns: each }))
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
    const scene = { ...before, position: after };
    if (!source.applies(plan) || !holdsDigits(after, 'product')) return { ledger };
    const reading = readSum(source, scene, { at: 'now' });
    const next = withLatches(ledger, reading, followsIn(plan));
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
  const step = spec.digitStep(Math.max(0, column));
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
        ? withLatches(scene.ledger, readSum(source, scene, moment), followsIn(scene.plan))
        : scene.ledger,
    assess: (scene, moment, findings) => {
      if (source.applies(scene.plan)) assess(source, scene, moment, findings);
    },
  };
}
