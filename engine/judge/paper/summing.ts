import type { ActionOf, Line } from '../../mat/action.ts';
import type { Desk } from '../../mat/desk.ts';
import { PRODUCT, PRODUCT_CARRIES } from '../../mat/sheet.ts';
import { isOver, NOW, sceneWith } from '../ledger.ts';
import { kept, recalled, slots } from '../memo.ts';
import type {
  Aspect,
  BarePlan,
  Finding,
  Ledger,
  Moment,
  Note,
  Noted,
  Plan,
  Scene,
} from '../scene.ts';
import { atLeastOne, type Columns, copiedColumns, sumColumns } from './columns.ts';
import { isSteady, withLatches } from './kept-line.ts';
import type { LineReading, LineSpec } from './line-reading.ts';
import { holdsDigits } from './lines.ts';
import { columnRead, digitStepOf, readBest, whole } from './reading-line.ts';
import { sumStep } from './row-steps.ts';
import { digitFinding, faultOf, markFaults } from './rows-written.ts';

/** By place from the origin: the sum, and of how many digits. */
export type Sums = readonly { readonly base: number; readonly reaching: number }[];

/** What is added up for the product, by place from the origin. */
export interface Addends {
  readonly applies: (plan: BarePlan) => boolean;
  readonly sums: (scene: Scene) => Sums;
  /** So many places, from the origin, are complete. */
  readonly ready: (scene: Scene) => number;
}

/** Nothing to add at any place. */
export function noSums({ rows, columns }: Plan): { base: number; reaching: number }[] {
  const sums: { base: number; reaching: number }[] = [];
  for (let place = 0; place < rows + columns; place += 1) sums.push({ base: 0, reaching: 0 });
  return sums;
}

/** In place of a row. */
const SUM = -1;
const SUM_CARRIES: readonly number[] = [PRODUCT_CARRIES];
/** While it is written, and at the finish. */
const READINGS = slots(2);

/** The product line against what stands above it; where nothing does, the true product may stand as well. */
export function readSum(source: Addends, scene: Scene, moment: Moment): LineReading {
  const final = isOver(moment);
  const specs = specsFor(source, scene, final);
  return (
    sumRead(scene, final, specs) ??
    keepSum(scene, scene.ledger, final, specs, readBest(scene, specs))
  );
}

function specsFor(source: Addends, scene: Scene, final: boolean): readonly LineSpec[] {
  const { memo, position } = scene;
  const sums = source.sums(scene);
  // How far the rows are matters only to what is written of the sum, and only until the end.
  const ready = !final && isWritten(position) ? source.ready(scene) : 0;
  const blank = holdsDigits(position, PRODUCT) && isNone(sums);
  const slot = SPECS + (final ? 1 : 0);
  return (
    recalled(memo, slot, sums, ready, blank) ??
    kept(memo, slot, specsOf(scene, sums, ready, final, blank), sums, ready, blank)
  );
}

/** More than one where nothing stands above: then the true product may stand as well. */
function columnsFor({ plan, memo }: Scene, sums: Sums, blank: boolean): readonly Columns[] {
  const known = recalled<readonly Columns[]>(memo, COLUMNS, plan, sums, blank);
  if (known !== undefined) return known;
  const own = sumColumns(sums);
  const columns = [
    isNothing(plan) ? atLeastOne(own) : own,
    ...(blank ? [copiedColumns(plan.product)] : []),
  ];
  return kept(memo, COLUMNS, columns, plan, sums, blank);
}

/** Reads the sum; what reads right stays right, and with that remembered, the sum mostly reads as it did. */
function latchSum(
  source: Addends,
  scene: Scene,
  moment: Moment,
): { readonly ledger: Ledger; readonly reading: LineReading } {
  const final = isOver(moment);
  const specs = specsFor(source, scene, final);
  const known = sumRead(scene, final, specs);
  const reading = known ?? readBest(scene, specs);
  const ledger = withLatches(scene, reading);
  const more = ledger !== scene.ledger;
  if (
    more
      ? isSteady(ledger.onPaper.sumLine, reading, specs[0]!.columns, specs.length)
      : known === undefined
  )
    keepSum(scene, ledger, final, specs, reading);
  return { ledger, reading };
}

/** How the sum read last, if nothing that decides it has changed since. */
function sumRead(
  { memo, position, ledger, claims }: Scene,
  final: boolean,
  specs: readonly LineSpec[],
): LineReading | undefined {
  const { lines } = position.paper;
  const { sumPens, sumLine } = ledger.onPaper;
  const slot = READINGS + (final ? 1 : 0);
  return recalled(
    memo,
    slot,
    specs,
    lines[PRODUCT],
    lines[PRODUCT_CARRIES],
    sumPens,
    sumLine,
    claims,
  );
}

function keepSum(
  { memo, position, ledger, claims }: Scene,
  { onPaper }: Ledger,
  final: boolean,
  specs: readonly LineSpec[],
  reading: LineReading,
): LineReading {
  const { lines } = position.paper;
  const slot = READINGS + (final ? 1 : 0);
  const digits = lines[PRODUCT];
  const carries = lines[PRODUCT_CARRIES];
  const { sumPens } = ledger.onPaper;
  return kept(memo, slot, reading, specs, digits, carries, sumPens, onPaper.sumLine, claims);
}

const SPECS = slots(2);
const COLUMNS = slots(1);

function isNone(sums: Sums): boolean {
  return sums.every(({ reaching }) => reaching === 0);
}

function isWritten({ paper }: Desk): boolean {
  return paper.lines[PRODUCT] !== undefined || paper.lines[PRODUCT_CARRIES] !== undefined;
}

function specsOf(
  scene: Scene,
  sums: Sums,
  ready: number,
  final: boolean,
  blank: boolean,
): readonly LineSpec[] {
  const decimals = Math.max(0, -scene.plan.problem.mat.origin);
  return columnsFor(scene, sums, blank).map((each) => ({
    row: SUM,
    name: 'own',
    line: PRODUCT,
    carries: SUM_CARRIES,
    lowest: 0,
    columns: each,
    progress: { final, ready },
    decimals,
  }));
}

function isNothing({ product }: Plan): boolean {
  return product.length === 1 && product[0] === 0;
}

function followsIn(plan: Plan) {
  return (column: number, given: number) => given !== (plan.product[column] ?? 0);
}

function assess(source: Addends, scene: Scene, moment: Moment, findings: Finding[]): void {
  const { plan, position } = scene;
  const reading = whole(readSum(source, scene, moment));
  const blank = !holdsDigits(position, PRODUCT);
  for (let column = 0; column < plan.product.length; column += 1) {
    findings[sumStep(plan, column)] = digitFinding(reading, column, plan.product, blank);
  }
  markFaults(reading.faults, findings);
}

const LINES: readonly Line[] = ['product', 'carry:product'];

type Pen = ActionOf<'write'> | ActionOf<'rub'>;

function noteWith(source: Addends): Note<Pen> {
  return (before, after, action) => {
    const { plan, ledger } = before;
    if (!source.applies(plan) || !holdsDigits(after, PRODUCT)) return { ledger };
    const scene = sceneWith(before, after);
    const { ledger: next, reading } = latchSum(source, scene, NOW);
    if (action.do === 'rub' || 'square' in action || !LINES.includes(action.line)) {
      return { ledger: next };
    }
    return { ledger: next, remark: remarkOf(plan, reading, action) };
  };
}

type Remark = NonNullable<Noted['remark']>;

function remarkOf(
  plan: Plan,
  reading: LineReading,
  { line, place, digit: given }: Extract<ActionOf<'write'>, { line: Line }>,
): Remark {
  const { spec, shift, carried, faults } = reading;
  const at = place - plan.problem.mat.origin;
  const isCarry = line !== 'product';
  const column = at - (isCarry ? carried : shift);
  const fault = faultOf(faults, at, given);
  if (fault !== undefined) return { step: fault.step, verdict: 'wrong', given, due: fault.due };
  const read = columnRead(reading, column);
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
      source.applies(scene.plan) && isWritten(scene.position)
        ? latchSum(source, scene, moment).ledger
        : scene.ledger,
    assess: (scene, moment, findings) => {
      // The finish of a row asks nothing of the sum.
      if (moment.at !== 'row' && source.applies(scene.plan))
        assess(source, scene, moment, findings);
    },
  };
}
