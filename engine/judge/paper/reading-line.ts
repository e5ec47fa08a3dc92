import type { Line } from '../../mat/action.ts';
import type { Plan, Scene } from '../scene.ts';
import { type ColumnRead, readColumns, stayed, type Written } from './carrying.ts';
import { withClaims } from './claims.ts';
import { keptLines, wayOf } from './kept-line.ts';
import type { Fault, LineReading, LineSpec } from './line-reading.ts';
import { pensOf } from './pens.ts';
import { digitStep, sumStep, zeroStep } from './row-steps.ts';

/** The step that answers for a digit of the line; without one of its own, the nearest. */
export function digitStepOf(plan: Plan, { row }: LineSpec, column: number): number {
  return row < 0 ? sumStep(plan, Math.max(0, column)) : digitStep(plan, row, column);
}

/** The step that answers for a placeholder; the lowest one answers for a line that stands too far left. */
export function zeroStepOf(plan: Plan, { row }: LineSpec, placeholder: number): number {
  return row < 0 ? sumStep(plan, 0) : zeroStep(plan, row, placeholder);
}

interface Paper {
  readonly scene: Scene;
  readonly digits: readonly (number | undefined)[];
  readonly carries: readonly (number | undefined)[];
  readonly highest: number;
  /** A carry was crossed out: a digit may have been made with it. */
  readonly crossed: boolean;
}

function linesOf({ line }: LineSpec): readonly Line[] {
  return line === null ? [] : [line];
}

/** What stands on a line, by place from the origin. */
function digitsOn({ plan, position }: Scene, line: Line | null): (number | undefined)[] {
  const digits = line === null ? undefined : position.paper.lines[line];
  const found: (number | undefined)[] = [];
  if (digits === undefined) return found;
  const { origin } = plan.problem.mat;
  for (let at = 0; at <= plan.rows + plan.columns; at += 1) found.push(digits[origin + at]);
  return found;
}

/** Of two lines of carries, what stands on the later one. */
function carriesOn(scene: Scene, lines: readonly Line[]): (number | undefined)[] {
  const found = digitsOn(scene, lines[0] ?? null);
  for (let index = 1; index < lines.length; index += 1) {
    for (const [at, digit] of digitsOn(scene, lines[index]!).entries()) {
      if (digit !== undefined || at >= found.length) found[at] = digit;
    }
  }
  return found;
}

function paperOf(scene: Scene, spec: LineSpec): Paper {
  const digits = digitsOn(scene, spec.line);
  const { carrying } = spec.columns;
  const carries = carrying ? carriesOn(scene, spec.carries) : [];
  const crossed =
    carrying && spec.carries.some((line) => pensOf(scene.ledger, line).crossed.length > 0);
  const highest = Math.max(highestOf(digits), highestOf(carries));
  return { scene, digits, carries, highest, crossed };
}

function highestOf(digits: readonly (number | undefined)[]): number {
  let highest = digits.length - 1;
  while (highest >= 0 && digits[highest] === undefined) highest -= 1;
  return highest;
}

/** Where something stands, in the order in which places are kept. */
function placesOn({ plan, position }: Scene, lines: readonly Line[]): number[] {
  const places = new Set<number>();
  for (const line of lines) {
    for (const place of Object.keys(position.paper.lines[line] ?? {}))
      places.add(Number(place) - plan.problem.mat.origin);
  }
  return [...places];
}

/** A carry as it stands, or as it stood when the digit that it feeds was written. */
function carryOf(paper: Paper, spec: LineSpec, at: number, fed: number): number | undefined {
  const stands = paper.carries[at];
  if (stands !== undefined) return stands;
  const { ledger } = paper.scene;
  const [penned = Number.POSITIVE_INFINITY] = actsAt(paper, linesOf(spec), fed);
  for (const line of spec.carries) {
    const crossed = pensOf(ledger, line).crossed[at];
    if (crossed !== undefined && crossed.act > penned) return crossed.given;
  }
  return undefined;
}

/** The line as it reads best: at the shift with the fewest wrong steps. */
export function readLine(scene: Scene, spec: LineSpec): LineReading {
  const paper = paperOf(scene, spec);
  let best = readAt(paper, spec, 0, 0);
  if (best.faults.length === 0 || highestOf(paper.digits) < 0) return best;
  // Zeros at the end are left out by those who are done: a line that lacks digits and has none wrong goes on where it is.
  const unfinished = spec.lowest === 0 && best.faults.every(({ missing }) => missing);
  const most = highestOf(paper.digits) - spec.lowest + 1;
  for (let shift = -Math.max(spec.lowest, spec.decimals); shift <= most; shift += 1) {
    if (shift === 0 || !mayShift(paper, spec, shift) || (shift < 0 && unfinished)) continue;
    // Carries stand over the digits as they are written, or where they were due.
    for (const carried of highestOf(paper.carries) < 0 ? [shift] : [shift, 0]) {
      const other = readAt(paper, spec, shift, carried);
      if (explains(paper, other) && isBetter(other, best)) best = other;
    }
  }
  return best;
}

/** Too far left only behind zeros or nothing; too far right only for lack of placeholders or of zeros at the end. */
function mayShift(paper: Paper, spec: LineSpec, shift: number): boolean {
  for (let at = spec.lowest; at < spec.lowest + shift; at += 1) {
    if ((paper.digits[at] ?? 0) > 0) return false;
  }
  return shift > 0 || spec.lowest === 0 || -shift <= spec.lowest;
}

/**
 * A shift explains nothing without a digit where the line then begins, unless that one is still to come (or,
 * too far left, without a zero before it). A line without placeholders stands too far right only for zeros at
 * the end left out, all else written and some of it to be recognised.
 */
function explains(paper: Paper, { spec, shift, reads, faults }: LineReading): boolean {
  const begins = (reads[0]?.given ?? null) !== null;
  if (shift > 0)
    return begins || (paper.digits[spec.lowest] !== undefined && reads[0]?.mark !== 'leftOut');
  if (spec.lowest > 0) return begins || isFromTheLeft(paper, spec, spec.lowest + shift);
  const zeros = reads.slice(0, -shift).every(({ mark }) => mark === 'leftOut');
  const shown = reads.some(({ mark, given }) => mark === 'right' && (given ?? 0) > 0);
  return spec.progress.final && zeros && shown && !faults.some(({ missing }) => missing);
}

/** The lowest of the digits from there up was written after the highest. */
function isFromTheLeft(paper: Paper, spec: LineSpec, first: number): boolean {
  const places = placesOn(paper.scene, linesOf(spec)).filter((at) => at >= first);
  const penned = (at: number) => actsAt(paper, linesOf(spec), at)[0] ?? -1;
  return penned(Math.min(...places)) > penned(Math.max(...places));
}

/**
 * Fewer steps, then fewer faults. Of two equally good readings the one without a shift; but while the line is
 * still being written and all else is right, a first 0 is a placeholder too many rather than a wrong digit, and
 * a first 0 that is due may be the placeholder that was written instead of another.
 */
function isBetter(other: LineReading, best: LineReading): boolean {
  const by = compareReadings(other, best);
  if (by !== 0) return by < 0;
  const { spec, faults, shift } = best;
  const [fault] = faults;
  if (spec.progress.final || shift !== 0 || faults.length > 1) return false;
  if (fault!.carry || fault!.at !== spec.lowest) return false;
  return other.shift > 0
    ? fault!.given === 0
    : spec.lowest > 0 && other.shift === -1 && fault!.due === 0;
}

/** Negative: the first spends fewer steps, or as many with fewer faults. */
export function compareReadings(one: LineReading, other: LineReading): number {
  return stepsOf(one) - stepsOf(other) || one.faults.length - other.faults.length;
}

function stepsOf({ faults }: LineReading): number {
  return new Set(faults.map(({ step }) => step)).size;
}

function writtenAt(paper: Paper, spec: LineSpec, shift: number, carried: number): Written {
  const { scene, digits, highest } = paper;
  const kept = keptLines(scene, spec)?.[wayOf(spec, shift)];
  const from = spec.lowest + shift;
  const carriesFrom = spec.lowest + carried;
  const written = {
    digits,
    carries: paper.crossed ? carriesAsFed(paper, spec, from, carriesFrom) : paper.carries,
    from,
    carriesFrom,
    kept,
    keptCarries: kept?.carries[carried],
    ended: null,
    highest: highest - spec.lowest - Math.min(shift, carried),
    decimals: spec.decimals,
  };
  return kept !== undefined && isWhole(written, kept.end)
    ? { ...written, ended: kept.end }
    : written;
}

function carriesAsFed(paper: Paper, spec: LineSpec, from: number, carriesFrom: number) {
  const places = paper.scene.plan.rows + paper.scene.plan.columns;
  return Array.from({ length: places + 1 }, (_, at) =>
    carryOf(paper, spec, at, at - carriesFrom + from),
  );
}

/** Whether all digits that made the whole line still stand. */
function isWhole(written: Written, end: number): boolean {
  for (let column = 0; column < end; column += 1) {
    if (stayed(written, column) === null) return false;
  }
  return end > 0;
}

function readAt(paper: Paper, spec: LineSpec, shift: number, carried: number): LineReading {
  const written = writtenAt(paper, spec, shift, carried);
  const reads = readColumns(spec.columns, written, spec.progress);
  const own = columnFaults(
    paper,
    spec,
    { shift, carried },
    reads,
    placeholderFaults(paper, spec, shift),
  );
  const faults = shift === 0 ? own : [...shiftFaults(paper, spec, shift, { reads, own }), ...own];
  return { spec, shift, carried, reads, faults: withClaims(paper.scene, faults) };
}

function actsAt({ scene }: Paper, lines: readonly Line[], at: number): number[] {
  const acts: number[] = [];
  for (const line of lines) {
    const act = pensOf(scene.ledger, line).acts[at];
    if (act !== undefined) acts.push(act);
  }
  return acts;
}

/** The actions that wrote what stands right on these lines. */
function actsFrom(
  paper: Paper,
  lines: readonly Line[],
  first: number,
  faults: readonly Fault[],
): number[] {
  return placesOn(paper.scene, lines)
    .filter((at) => at >= first && !faults.some((fault) => fault.at === at))
    .flatMap((at) => actsAt(paper, lines, at));
}

function shiftFaults(
  paper: Paper,
  spec: LineSpec,
  shift: number,
  { reads, own }: { reads: readonly ColumnRead[]; own: readonly Fault[] },
): Fault[] {
  // A line without placeholders stands too far right only where zeros at the end were left out.
  if (shift < 0 && spec.lowest === 0) return [];
  const first = spec.lowest + shift;
  const acts = [
    ...actsFrom(paper, linesOf(spec), Math.min(first, spec.lowest), own),
    ...(spec.columns.carrying ? actsFrom(paper, spec.carries, 0, own) : []),
  ];
  if (shift < 0) {
    const given = paper.digits[first] ?? null;
    const fault = { at: first, acts, given, due: 0, missing: false };
    return Array.from({ length: -shift }, (_, more) => ({
      ...fault,
      step: zeroStepOf(paper.scene.plan, spec, first + more),
    }));
  }
  const at = paper.digits[spec.lowest] !== undefined ? spec.lowest : first;
  const given = paper.digits[at] ?? null;
  const due = reads[0]?.due ?? 0;
  return [{ step: zeroStepOf(paper.scene.plan, spec, 0), at, acts, given, due, missing: false }];
}

function placeholderFaults(paper: Paper, spec: LineSpec, shift: number): Fault[] {
  const faults: Fault[] = [];
  for (let at = 0; at < Math.min(spec.lowest, spec.lowest + shift); at += 1) {
    const given = paper.digits[at] ?? 0;
    if (given === 0) continue;
    const acts = actsAt(paper, linesOf(spec), at);
    faults.push({
      step: zeroStepOf(paper.scene.plan, spec, at),
      at,
      acts,
      given,
      due: 0,
      missing: false,
    });
  }
  return faults;
}

function columnFaults(
  paper: Paper,
  spec: LineSpec,
  { shift, carried }: { shift: number; carried: number },
  reads: readonly ColumnRead[],
  before: readonly Fault[],
): Fault[] {
  const faults = before.slice();
  for (let column = 0; column < reads.length; column += 1) {
    const { mark, carry, given, due, carryDue } = reads[column]!;
    const missing = mark === 'missing' && spec.progress.final;
    if (carry !== 'wrong' && mark !== 'wrong' && !missing) continue;
    const at = spec.lowest + column + shift;
    const step = digitStepOf(paper.scene.plan, spec, column);
    if (carry === 'wrong') {
      const over = spec.lowest + column + carried;
      const noted = reads[column]!.noted;
      const acts = actsAt(paper, spec.carries, over);
      faults.push({
        step,
        at: over,
        acts,
        given: noted,
        due: carryDue,
        missing: false,
        carry: true,
      });
    }
    if (mark !== 'wrong' && !missing) continue;
    const acts = given === null ? [] : actsAt(paper, linesOf(spec), at);
    faults.push({ step, at, acts, given, due, missing: given === null });
  }
  return faults;
}
