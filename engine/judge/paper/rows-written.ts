import type { ActionOf, Line } from '../../mat/action.ts';
import { MAT_LIMITS } from '../../mat/geometry.ts';
import { FIRST_CARRIES, lineIndex, PRODUCT } from '../../mat/sheet.ts';
import {
  finding,
  findingWith,
  isOver,
  NOTHING_YET,
  NOW,
  RIGHT_DIGITS,
  sceneWith,
} from '../ledger.ts';
import { kept, recalled, remembered, slots } from '../memo.ts';
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
import { withClaims } from './claims.ts';
import type { Columns } from './columns.ts';
import { isSteady, withLatches } from './kept-line.ts';
import type { ColumnRead, Fault, LineReading, LineSpec } from './line-reading.ts';
import { carriesOf, holdsDigits, NO_LINE, type RowLine, rowLines } from './lines.ts';
import { pensOf } from './pens.ts';
import { columnRead, digitStepOf, readBest, whole, zeroStepOf } from './reading-line.ts';
import { keepRow, rowRead, SINGLE_CARRIES } from './row-memo.ts';
import { digitStep, isZeroRow, rowSteps, zeroStep } from './row-steps.ts';

/** Where the digits of a row come from. */
export interface RowSource {
  /** Whether this problem has rows to write at all. */
  readonly applies: (plan: BarePlan) => boolean;
  /** What may stand there; more than one where what it is read from may be read in several ways. */
  readonly columns: (scene: Scene, row: number) => readonly Columns[];
  /** Remembers what there was to be read when a digit was written. */
  readonly see?: (scene: Scene, row: number) => Ledger;
  /** Whether what it is made of is complete. */
  readonly ready: (scene: Scene, row: number) => boolean;
}

export function isFinal({ position }: Scene, moment: Moment, row: number): boolean {
  const now = moment.at === 'row' && moment.row === row;
  return now || isOver(moment) || position.finished.rows.includes(row);
}

/** A row that is still being written, or is finished. */
const SPECS = slots(2 * MAT_LIMITS.rows.most);
const WHOLE = slots(MAT_LIMITS.rows.most);

/** How a row reads at its best: at any shift, in any way that its source may be read. */
export function readRow(source: RowSource, scene: Scene, moment: Moment, row: number): LineReading {
  const found = rowLines(scene)[row]!;
  const final = isFinal(scene, moment, row);
  const columns = source.columns(scene, found.worked);
  const ready = source.ready(scene, found.worked);
  return (
    rowRead(scene, final, found, columns, ready) ??
    keepRow(
      scene,
      scene.ledger,
      final,
      found,
      columns,
      ready,
      readRowNow(scene, final, found, columns, ready),
    )
  );
}

/** The same with all its columns, those too where nothing is written yet. */
function wholeRow(source: RowSource, scene: Scene, moment: Moment, row: number): LineReading {
  const reading = readRow(source, scene, moment, row);
  return reading.short
    ? remembered(scene.memo, WHOLE + row, () => whole(reading), reading)
    : reading;
}

function readRowNow(
  scene: Scene,
  final: boolean,
  found: RowLine,
  columns: readonly Columns[],
  ready: boolean,
): LineReading {
  const { memo, plan } = scene;
  const slot = SPECS + 2 * found.row + (final ? 1 : 0);
  const specs: readonly LineSpec[] =
    recalled(memo, slot, found, columns, ready) ??
    kept(memo, slot, specsOf(plan, found, columns, final, ready), found, columns, ready);
  const best = readBest(scene, specs);
  if (found.worked === found.row) return best;
  const { spec, shift, carried, reads, short, written } = best;
  const faults = withClaims(scene, [beginFault(scene, found), ...best.faults]);
  return { spec, shift, carried, reads, short, written, faults };
}

const NO_CARRIES: readonly number[] = [];

/** The usual way is that a row is worked in its own place. */
function nameOf(row: number, worked: number, lowest: number): string {
  return worked === row ? 'own' : `${worked} at ${lowest}`;
}

/** A row worked in the place of another is read where either of the two is due. */
function specsOf(
  plan: Plan,
  { row, line, worked }: RowLine,
  columns: readonly Columns[],
  final: boolean,
  isReady: boolean,
): readonly LineSpec[] {
  const single = plan.up.length === 1;
  const own = line === NO_LINE ? NO_CARRIES : [carriesOf(line)];
  const carries = single ? SINGLE_CARRIES : own;
  const progress = { final, ready: isReady ? Number.POSITIVE_INFINITY : 0 };
  const decimals = single ? Math.max(0, -plan.problem.mat.origin) : 0;
  const specs: LineSpec[] = [];
  for (const lowest of worked === row ? [row] : [worked, row])
    for (const each of columns) {
      const name = nameOf(row, worked, lowest);
      specs.push({ row, name, line, carries, lowest, columns: each, progress, decimals });
    }
  return specs;
}

/** The first digit of the row that is left out answers for the multiplier digit that was touched in its place. */
function beginFault({ plan, ledger }: Scene, { row, line, worked }: RowLine): Fault {
  const act = pensOf(ledger, line).begun;
  return {
    step: digitStep(plan, row, 0),
    at: -1,
    acts: act === undefined ? [] : [act],
    given: worked,
    due: row,
    missing: false,
  };
}

function assessRow(
  source: RowSource,
  scene: Scene,
  moment: Moment,
  findings: Finding[],
  row: number,
) {
  const reading = wholeRow(source, scene, moment, row);
  const blank = !holdsDigits(scene.position, reading.spec.line);
  if (isZeroRow(scene.plan, row)) {
    findings[digitStep(scene.plan, row, 0)] = zeroRow(scene, reading, blank);
  } else {
    for (let zero = 0; zero < row; zero += 1) {
      findings[zeroStep(scene.plan, row, zero)] = placeholder(reading, blank);
    }
    const truths = scene.plan.partials[row]!;
    for (let column = 0; column < truths.length; column += 1) {
      findings[digitStep(scene.plan, row, column)] = digitFinding(reading, column, truths, blank);
    }
  }
  markFaults(reading.faults, findings);
}

/** Written or left empty, a placeholder stands as soon as the line does; at the end a begun line is enough. */
function placeholder({ spec }: LineReading, blank: boolean): Finding {
  if (!blank) return finding('right', false, null, 0);
  if (!spec.progress.final) return NOTHING_YET;
  const begun = spec.line !== NO_LINE || spec.columns.needed === 0;
  return begun ? finding('right', false) : finding('none', false, null, 0);
}

export function digitFinding(
  { spec, reads }: LineReading,
  column: number,
  truths: readonly number[],
  blank: boolean,
): Finding {
  const truth = truths[column]!;
  const read: ColumnRead | undefined = reads[column];
  const { final, ready } = spec.progress;
  if (read === undefined || read.mark === 'absent') {
    const known = final || (!blank && column < ready);
    // The true problem had something there, unless it makes nothing either.
    return known ? finding('right', truth > 0 || truths.length > 1) : NOTHING_YET;
  }
  const { mark, given, due } = read;
  switch (mark) {
    case 'waiting':
      return finding('none', false, given, null);
    case 'missing':
      return finding('none', false, null, due);
    case 'leftOut':
      return final ? finding('right', truth !== 0, null, 0) : finding('none', false, null, due);
    default:
      // What is wrong here and not among the faults is paid by another step.
      return given === truth && given === due
        ? RIGHT_DIGITS[given]!
        : finding('right', given !== truth, given, due);
  }
}

/** Nothing or zeros; where the child's own tile makes it a row, the whole row belongs to the one step. */
function zeroRow(scene: Scene, { spec, reads }: LineReading, blank: boolean): Finding {
  const later = holdsDigits(scene.position, PRODUCT);
  if (blank && !spec.progress.final && !later) return NOTHING_YET;
  const waiting = reads.some(({ mark }) => mark === 'waiting' || mark === 'missing');
  if (waiting) return finding('none', false);
  return finding('right', spec.columns.needed > 0, null, 0);
}

/** What is not as due spends its step; what is wrong before what is missing. */
export function markFaults(faults: readonly Fault[], findings: Finding[]): void {
  for (const { step, acts, given, due, missing } of faults) {
    const before = findings[step]!;
    if (missing) {
      if (before.grade === 'right') findings[step] = finding('none', false, null, due);
      continue;
    }
    const blames = [...(before.blames ?? []), ...acts];
    findings[step] = findingWith(finding('wrong', false, given, due), blames);
  }
}

/** The row that a line or its carries belong to; −1: none. */
function rowOf(scene: Scene, line: number): number {
  if (scene.plan.up.length === 1) return 0;
  const lines = rowLines(scene);
  for (let row = 0; row < lines.length; row += 1) {
    const own = lines[row]!.line;
    if (own !== NO_LINE && (own === line || carriesOf(own) === line)) return row;
  }
  return -1;
}

type Pen = ActionOf<'write'> | ActionOf<'rub'>;

function noteWith(source: RowSource): Note<Pen> {
  return (before, after, action) => {
    const { plan, ledger } = before;
    if ('square' in action || !source.applies(plan)) return { ledger };
    const written = sceneWith(before, after);
    const line = lineIndex(action.line);
    const row = rowOf(written, line);
    if (row < 0) return { ledger };
    const seen =
      action.do === 'write' ? source.see?.(written, rowLines(written)[row]!.worked) : undefined;
    const scene = seen === undefined ? written : sceneWith(before, after, seen);
    const { ledger: next, reading } = latchRow(source, scene, NOW, row);
    const beside = (line < FIRST_CARRIES || line === PRODUCT) && line !== reading.spec.line;
    if (action.do === 'rub' || beside) return { ledger: next };
    return { ledger: next, remark: remarkOf(scene, reading, row, action) };
  };
}

/** Reads the row; what reads right stays right, and with that remembered, the row mostly reads as it did. */
function latchRow(
  source: RowSource,
  scene: Scene,
  moment: Moment,
  row: number,
): { readonly ledger: Ledger; readonly reading: LineReading } {
  const found = rowLines(scene)[row]!;
  const final = isFinal(scene, moment, row);
  const columns = source.columns(scene, found.worked);
  const ready = source.ready(scene, found.worked);
  const known = rowRead(scene, final, found, columns, ready);
  const reading = known ?? readRowNow(scene, final, found, columns, ready);
  const ledger = withLatches(scene, reading);
  const more = ledger !== scene.ledger;
  if (
    more
      ? isSteady(ledger.onPaper.lines[row]!, reading, columns[0]!, columns.length)
      : known === undefined
  )
    keepRow(scene, ledger, final, found, columns, ready, reading);
  return { ledger, reading };
}

type Remark = NonNullable<Noted['remark']>;

/** What this one digit or carry is, in the line as it now reads. */
function remarkOf(
  scene: Scene,
  reading: LineReading,
  row: number,
  action: Extract<ActionOf<'write'>, { line: Line }>,
): Remark {
  const { spec, shift, carried, faults } = reading;
  const at = action.place - scene.plan.problem.mat.origin;
  const given = action.digit;
  const isCarry = lineIndex(action.line) !== spec.line;
  const column = at - spec.lowest - (isCarry ? carried : shift);
  const fault = faultOf(faults, at, given);
  if (fault !== undefined) return { step: fault.step, verdict: 'wrong', given, due: fault.due };
  if (column < 0)
    return { step: zeroStepOf(scene.plan, spec, at), verdict: 'right', given, due: 0 };
  const read = columnRead(reading, column);
  const step = digitStepOf(scene.plan, spec, column);
  if (read === undefined) return { step, verdict: 'right', given, due: 0 };
  if (isCarry) {
    const verdict = read.carry === 'right' ? 'right' : 'neutral';
    return { step, verdict, given, due: read.carryDue };
  }
  if (read.mark !== 'right') return { step, verdict: 'neutral', given, due: read.due };
  const follows = given !== (scene.plan.partials[row]?.[column] ?? 0);
  const verdict = follows ? 'follows' : 'right';
  return { step, verdict, given, due: read.due };
}

/** What is wrong with the digit that stands there, if anything is. */
export function faultOf(faults: readonly Fault[], at: number, given: number): Fault | undefined {
  if (faults.length === 0) return undefined;
  return faults.find((each) => each.at === at && !each.missing && each.given === given);
}

/** Each row's partial product is written, its placeholders with it. */
export function rowsWritten(source: RowSource): Aspect {
  const note = noteWith(source);
  return {
    steps: (plan) => (source.applies(plan) ? rowSteps(plan) : []),
    notes: { write: note, rub: note },
    latch: (scene, moment) => {
      if (!source.applies(scene.plan)) return scene.ledger;
      let latched = scene;
      for (let row = 0; row < scene.plan.up.length; row += 1) {
        const { ledger } = latchRow(source, latched, moment, row);
        if (ledger !== latched.ledger) latched = sceneWith(scene, scene.position, ledger);
      }
      return latched.ledger;
    },
    assess: (scene, moment, findings) => {
      if (!source.applies(scene.plan)) return;
      // The finish of a row asks for that row alone, unless an answer has charged another for what stands in it.
      const alone = moment.at === 'row' && scene.claims.size === 0;
      for (let row = 0; row < scene.plan.up.length; row += 1) {
        if (!alone || row === moment.row) assessRow(source, scene, moment, findings, row);
      }
    },
  };
}
