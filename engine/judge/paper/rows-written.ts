import type { ActionOf, Line } from '../../mat/action.ts';
import { finding, isOver, NOTHING_YET, sceneWith } from '../ledger.ts';
import { remembered } from '../memo.ts';
import type { Aspect, BarePlan, Finding, Ledger, Moment, Note, Noted, Scene } from '../scene.ts';
import type { ColumnRead } from './carrying.ts';
import { withClaims } from './claims.ts';
import type { Columns } from './columns.ts';
import { withLatches } from './kept-line.ts';
import type { Fault, LineReading, LineSpec } from './line-reading.ts';
import { carryLine, holdsDigits, type RowLine, rowLines } from './lines.ts';
import { pensOf } from './pens.ts';
import { compareReadings, digitStepOf, readLine, zeroStepOf } from './reading-line.ts';
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

/** How a row reads at its best: at any shift, in any way that its source may be read. */
export function readRow(source: RowSource, scene: Scene, moment: Moment, row: number): LineReading {
  const found = rowLines(scene)[row]!;
  const final = isFinal(scene, moment, row);
  const { lines } = scene.ledger;
  const from: unknown[] = [
    found.line,
    found.worked,
    source.columns(scene, found.worked),
    source.ready(scene, found.worked),
    lines[row],
    scene.claims,
  ];
  for (const line of linesOf(scene, found)) {
    from.push(scene.position.paper.lines[line], scene.ledger.pens[line]);
  }
  const name = (final ? FINAL_ROWS : ROWS)[row]!;
  return remembered(scene.memo, name, from, () => readRowNow(source, scene, final, found));
}

const MOST_ROWS = 6;
const ROWS = Array.from({ length: MOST_ROWS }, (_, row) => `row ${row}`);
const FINAL_ROWS = ROWS.map((row) => `${row}, final`);

/** The line of a row and its carries. */
function linesOf({ plan }: Scene, { line }: RowLine): readonly Line[] {
  if (line === null) return [];
  return plan.up.length === 1 ? [line, ...SINGLE_CARRIES] : [line, carryLine(line)];
}

/** One row has its carries on its own line of them or on the product's. */
const SINGLE_CARRIES: readonly Line[] = ['carry:0', 'carry:product'];

/** The usual way is that a row is worked in its own place. */
function nameOf(row: number, worked: number, lowest: number): string {
  return worked === row ? 'own' : `${worked} at ${lowest}`;
}

function readRowNow(source: RowSource, scene: Scene, final: boolean, found: RowLine): LineReading {
  const { row } = found;
  const readings = specsOf(source, scene, final, found).map((spec) => readLine(scene, spec));
  const best = readings.reduce((one, other) => (compareReadings(other, one) < 0 ? other : one));
  if (found.worked === row) return best;
  return { ...best, faults: withClaims(scene, [beginFault(scene, found), ...best.faults]) };
}

/** A row worked in the place of another is read where either of the two is due. */
function specsOf(
  source: RowSource,
  scene: Scene,
  final: boolean,
  { row, line, worked }: RowLine,
): LineSpec[] {
  const { plan } = scene;
  const single = plan.up.length === 1;
  const carries = single ? SINGLE_CARRIES : [];
  const progress = {
    final,
    ready: source.ready(scene, worked) ? Number.POSITIVE_INFINITY : 0,
  };
  const own = line === null || single ? carries : [carryLine(line)];
  const decimals = single ? Math.max(0, -plan.problem.mat.origin) : 0;
  const lowests = worked === row ? [row] : [worked, row];
  return lowests.flatMap((lowest) =>
    source.columns(scene, worked).map((columns) => ({
      row,
      name: nameOf(row, worked, lowest),
      line,
      carries: own,
      lowest,
      columns,
      progress,
      decimals,
    })),
  );
}

/** The first digit of the row that is left out answers for the multiplier digit that was touched in its place. */
function beginFault({ plan, ledger }: Scene, { row, line, worked }: RowLine): Fault {
  const act = pensOf(ledger, line!).begun;
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
  const reading = readRow(source, scene, moment, row);
  const blank = reading.spec.line === null || !holdsDigits(scene.position, reading.spec.line);
  if (isZeroRow(scene.plan, row)) {
    findings[digitStep(scene.plan, row, 0)] = zeroRow(scene, reading, blank);
  } else {
    for (let zero = 0; zero < row; zero += 1) {
      findings[zeroStep(scene.plan, row, zero)] = placeholder(reading, blank);
    }
    for (const column of scene.plan.partials[row]!.keys()) {
      const step = digitStep(scene.plan, row, column);
      findings[step] = digitFinding(reading, column, scene.plan.partials[row]!, blank);
    }
  }
  markFaults(reading.faults, findings);
}

/** Written or left empty, a placeholder stands as soon as the line does; at the end a begun line is enough. */
function placeholder({ spec }: LineReading, blank: boolean): Finding {
  if (!blank) return finding('right', false, null, 0);
  if (!spec.progress.final) return NOTHING_YET;
  const begun = spec.line !== null || spec.columns.needed === 0;
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
      return finding('right', given !== truth, given, due);
  }
}

/** Nothing or zeros; where the child's own tile makes it a row, the whole row belongs to the one step. */
function zeroRow(scene: Scene, { spec, reads }: LineReading, blank: boolean): Finding {
  const later = holdsDigits(scene.position, 'product');
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
    findings[step] = { ...finding('wrong', false, given, due), blames };
  }
}

function followsIn({ plan }: Scene, row: number) {
  return (column: number, given: number) => given !== (plan.partials[row]?.[column] ?? 0);
}

function latchRow(source: RowSource, scene: Scene, moment: Moment, row: number): Ledger {
  return withLatches(scene, readRow(source, scene, moment, row));
}

/** The row that a line or its carries belong to; −1: none. */
function rowOf(scene: Scene, line: Line): number {
  if (scene.plan.up.length === 1) return 0;
  const found = rowLines(scene).find(
    (each) => each.line !== null && (each.line === line || carryLine(each.line) === line),
  );
  return found?.row ?? -1;
}

type Pen = ActionOf<'write'> | ActionOf<'rub'>;

function noteWith(source: RowSource): Note<Pen> {
  return (before, after, action) => {
    const { plan, ledger } = before;
    if ('square' in action || !source.applies(plan)) return { ledger };
    const written = sceneWith(before, after);
    const row = rowOf(written, action.line);
    if (row < 0) return { ledger };
    const { worked } = rowLines(written)[row]!;
    const seen = action.do === 'write' ? source.see?.(written, worked) : undefined;
    const scene = seen === undefined ? written : sceneWith(before, after, seen);
    const reading = readRow(source, scene, { at: 'now' }, row);
    const next = withLatches(scene, reading);
    const beside = !action.line.startsWith('carry') && action.line !== reading.spec.line;
    if (action.do === 'rub' || beside) return { ledger: next };
    return { ledger: next, remark: remarkOf(scene, reading, row, action) };
  };
}

type Remark = NonNullable<Noted['remark']>;

/** What this one digit or carry is, in the line as it now reads. */
function remarkOf(
  scene: Scene,
  reading: LineReading,
  row: number,
  action: Extract<ActionOf<'write'>, { line: Line }>,
): Remark {
  const { spec, shift, carried, reads, faults } = reading;
  const at = action.place - scene.plan.problem.mat.origin;
  const given = action.digit;
  const isCarry = action.line !== spec.line;
  const column = at - spec.lowest - (isCarry ? carried : shift);
  const fault = faults.find((each) => each.at === at && !each.missing && each.given === given);
  if (fault !== undefined) return { step: fault.step, verdict: 'wrong', given, due: fault.due };
  if (column < 0)
    return { step: zeroStepOf(scene.plan, spec, at), verdict: 'right', given, due: 0 };
  const read = reads[column];
  const step = digitStepOf(scene.plan, spec, column);
  if (read === undefined) return { step, verdict: 'right', given, due: 0 };
  if (isCarry) {
    const verdict = read.carry === 'right' ? 'right' : 'neutral';
    return { step, verdict, given, due: read.carryDue };
  }
  if (read.mark !== 'right') return { step, verdict: 'neutral', given, due: read.due };
  const verdict = followsIn(scene, row)(column, given) ? 'follows' : 'right';
  return { step, verdict, given, due: read.due };
}

/** Each row's partial product is written, its placeholders with it. */
export function rowsWritten(source: RowSource): Aspect {
  const note = noteWith(source);
  const rows = (scene: Scene) => (source.applies(scene.plan) ? [...scene.plan.up.keys()] : []);
  return {
    steps: (plan) => (source.applies(plan) ? rowSteps(plan) : []),
    notes: { write: note, rub: note },
    latch: (scene, moment) =>
      rows(scene).reduce(
        (ledger, row) => latchRow(source, sceneWith(scene, scene.position, ledger), moment, row),
        scene.ledger,
      ),
    assess: (scene, moment, findings) => {
      for (const row of rows(scene)) assessRow(source, scene, moment, findings, row);
    },
  };
}
