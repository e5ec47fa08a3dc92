import { type Digits, placesOn, writtenBy } from '../../mat/sheet.ts';
import type { Plan, Scene } from '../scene.ts';
import { readAbove, readColumns } from './carrying.ts';
import { withClaims } from './claims.ts';
import { endedIn, keptIn, keptLines, wayOf } from './kept-line.ts';
import type {
  ColumnRead,
  Fault,
  KeptLine,
  LineReading,
  LineSpec,
  Written,
} from './line-reading.ts';
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
  readonly digits: Digits;
  readonly carries: Digits;
  /** Highest place with a digit, with a carry; −1: none. */
  readonly highestDigit: number;
  readonly highestCarry: number;
  /** A carry was crossed out: a digit may have been made with it. */
  readonly crossed: boolean;
}

const NO_DIGITS: Digits = [];
const NO_FAULTS: readonly Fault[] = [];

/** What stands on a line, by place from the origin. */
function digitsOn({ position }: Scene, line: number): Digits {
  return line < 0 ? NO_DIGITS : (position.paper.lines[line] ?? NO_DIGITS);
}

/** Of two lines of carries, what stands on the later one. */
function carriesOn(scene: Scene, lines: readonly number[]): Digits {
  let found = NO_DIGITS;
  for (let index = 0; index < lines.length; index += 1) {
    const more = digitsOn(scene, lines[index]!);
    if (more === NO_DIGITS) continue;
    const below = found;
    found = below === NO_DIGITS ? more : more.map((digit, at) => digit ?? below[at]);
  }
  return found;
}

function isCrossed({ ledger }: Scene, lines: readonly number[]): boolean {
  for (let index = 0; index < lines.length; index += 1) {
    if (pensOf(ledger, lines[index]!).crossed.length > 0) return true;
  }
  return false;
}

function paperOf(scene: Scene, { line, carries: over, columns }: LineSpec): Paper {
  const digits = digitsOn(scene, line);
  const carries = columns.carrying ? carriesOn(scene, over) : NO_DIGITS;
  return {
    scene,
    digits,
    carries,
    highestDigit: highestOf(digits),
    highestCarry: highestOf(carries),
    crossed: columns.carrying && isCrossed(scene, over),
  };
}

function highestOf(digits: Digits): number {
  let highest = digits.length - 1;
  while (highest >= 0 && digits[highest] === undefined) highest -= 1;
  return highest;
}

/** Where something stands on any of the lines. */
function placesOf({ position }: Scene, lines: readonly number[]): readonly number[] {
  return [...new Set(lines.flatMap((line) => placesOn(position.paper, line)))];
}

/** A carry as it stands, or as it stood when the digit that it feeds was written. */
function carryOf(paper: Paper, spec: LineSpec, at: number, fed: number): number | undefined {
  const stands = paper.carries[at];
  if (stands !== undefined) return stands;
  const { ledger } = paper.scene;
  for (const line of spec.carries) {
    const crossed = pensOf(ledger, line).crossed[at];
    if (crossed === undefined) continue;
    const penned = actAt(paper, spec.line, fed) ?? Number.POSITIVE_INFINITY;
    if (crossed.act > penned) return crossed.given;
  }
  return undefined;
}

/** The line as it reads best in any of several ways; of equally good ones the first. */
export function readBest(scene: Scene, specs: readonly LineSpec[]): LineReading {
  let best = readLine(scene, specs[0]!);
  for (let index = 1; index < specs.length; index += 1) {
    const other = readLine(scene, specs[index]!);
    if (compareFaults(other.faults, best.faults) < 0) best = other;
  }
  return best;
}

/** The line as it reads best: at the shift with the fewest wrong steps. */
function readLine(scene: Scene, spec: LineSpec): LineReading {
  const paper = paperOf(scene, spec);
  const straight = readAt(paper, spec, 0, 0);
  return straight.faults.length === 0 || paper.highestDigit < 0 || isPlain(paper, straight)
    ? straight
    : shifted(paper, spec, straight);
}

/** One fault that no shift does better: a shift is a wrong step itself, but where zeros at the end were left out. */
function isPlain({ scene }: Paper, straight: LineReading): boolean {
  const { spec, faults } = straight;
  if (scene.claims.size > 0 || faults.length > 1) return false;
  if (spec.progress.final) return spec.lowest > 0 || spec.decimals === 0;
  return !mayBeZero(straight, 1) && !mayBeZero(straight, -1);
}

function shifted(paper: Paper, spec: LineSpec, straight: LineReading): LineReading {
  const { scene } = paper;
  let best = straight;
  // Zeros at the end are left out by those who are done: a line that lacks digits and has none wrong goes on where it is.
  const unfinished = spec.lowest === 0 && best.faults.every(({ missing }) => missing);
  const most = paper.highestDigit - spec.lowest + 1;
  for (let shift = -Math.max(spec.lowest, spec.decimals); shift <= most; shift += 1) {
    if (shift === 0 || !mayShift(paper, spec, shift) || (shift < 0 && unfinished)) continue;
    // Carries stand over the digits as they are written, or where they were due.
    for (const carried of paper.highestCarry < 0 ? [shift] : [shift, 0]) {
      const read = readsAt(paper, spec, shift, carried);
      if (!explains(paper, read)) continue;
      const own = columnFaults(paper, read, placeholderFaults(paper, spec, shift));
      // Where no answer has said which steps pay, it need not be known who wrote what.
      if (scene.claims.size === 0) {
        const faults = [...shiftFaults(paper, read, NO_ACTS), ...own];
        if (!isBetter(faults, shift, best)) continue;
      }
      const other = withFaults(paper, read, own);
      if (isBetter(other.faults, shift, best)) best = other;
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
function explains(paper: Paper, { spec, shift, reads }: LineReading): boolean {
  const begins = (reads[0]?.given ?? null) !== null;
  if (shift > 0)
    return begins || (paper.digits[spec.lowest] !== undefined && reads[0]?.mark !== 'leftOut');
  if (spec.lowest > 0) return begins || isFromTheLeft(paper, spec, spec.lowest + shift);
  const zeros = reads.slice(0, -shift).every(({ mark }) => mark === 'leftOut');
  const shown = reads.some(({ mark, given }) => mark === 'right' && (given ?? 0) > 0);
  return spec.progress.final && zeros && shown && !reads.some(({ mark }) => mark === 'missing');
}

/** The lowest of the digits from there up was written after the highest. */
function isFromTheLeft(paper: Paper, { line }: LineSpec, first: number): boolean {
  const places = placesOn(paper.scene.position.paper, line).filter((at) => at >= first);
  const [lowest, highest] = [places[0], places.at(-1)];
  if (lowest === undefined || highest === undefined) return false;
  return (actAt(paper, line, lowest) ?? -1) > (actAt(paper, line, highest) ?? -1);
}

/** Fewer steps, then fewer faults. Of two equally good readings the one without a shift, but for a first 0. */
function isBetter(faults: readonly Fault[], shift: number, best: LineReading): boolean {
  const by = compareFaults(faults, best.faults);
  return by !== 0 ? by < 0 : mayBeZero(best, shift);
}

/**
 * While the line is still being written and all else is right, a first 0 is a placeholder too many rather than a
 * wrong digit, and a first 0 that is due may be the placeholder that was written instead of another.
 */
function mayBeZero({ spec, faults, shift }: LineReading, other: number): boolean {
  const [fault] = faults;
  if (spec.progress.final || shift !== 0 || faults.length > 1) return false;
  if (fault!.carry || fault!.at !== spec.lowest) return false;
  return other > 0 ? fault!.given === 0 : spec.lowest > 0 && other === -1 && fault!.due === 0;
}

/** Negative: the first spends fewer steps, or as many with fewer faults. */
function compareFaults(one: readonly Fault[], other: readonly Fault[]): number {
  return stepsIn(one) - stepsIn(other) || one.length - other.length;
}

function stepsIn(faults: readonly Fault[]): number {
  return faults.length < 2 ? faults.length : new Set(faults.map(({ step }) => step)).size;
}

function writtenAt(
  paper: Paper,
  kept: KeptLine | undefined,
  spec: LineSpec,
  shift: number,
  carried: number,
): Written {
  const { digits, highestDigit, highestCarry } = paper;
  const from = spec.lowest + shift;
  const carries = paper.crossed
    ? carriesAsFed(paper, spec, from, spec.lowest + carried)
    : paper.carries;
  const ended = endedIn(kept, digits, from);
  const highest = Math.max(highestDigit, highestCarry) - spec.lowest - Math.min(shift, carried);
  return { spec, shift, carried, digits, carries, ended, highest };
}

function carriesAsFed(paper: Paper, spec: LineSpec, from: number, carriesFrom: number): Digits {
  const { rows, columns } = paper.scene.plan;
  const carries: (number | undefined)[] = [];
  for (let at = 0; at <= rows + columns; at += 1)
    carries.push(carryOf(paper, spec, at, at - carriesFrom + from));
  return carries;
}

function readAt(paper: Paper, spec: LineSpec, shift: number, carried: number): LineReading {
  const read = readsAt(paper, spec, shift, carried);
  const faults = columnFaults(paper, read, placeholderFaults(paper, spec, shift));
  return faults.length === 0 && shift === 0 ? read : withFaults(paper, read, faults);
}

/** As it reads there, nothing yet found wrong. */
function readsAt(paper: Paper, spec: LineSpec, shift: number, carried: number): LineReading {
  const kept = keptIn(keptLines(paper.scene, spec), wayOf(spec, shift));
  const written = writtenAt(paper, kept, spec, shift, carried);
  const short = !spec.progress.final && written.highest + 1 < spec.columns.needed;
  const reads = readColumns(written, kept, short);
  return { spec, shift, carried, reads, short, written, faults: NO_FAULTS };
}

/** The reading with all columns that something is due in. */
export function whole(reading: LineReading): LineReading {
  if (!reading.short) return reading;
  const { spec, shift, carried, written, faults } = reading;
  const reads = readAbove(written, reading.reads);
  return { spec, shift, carried, reads, short: false, written, faults };
}

/** How a column reads, even where nothing is written yet. */
export function columnRead(reading: LineReading, column: number): ColumnRead | undefined {
  return reading.reads[column] ?? (reading.short ? whole(reading).reads[column] : undefined);
}

function withFaults(paper: Paper, reading: LineReading, own: readonly Fault[]): LineReading {
  const { spec, shift, carried, reads, short, written } = reading;
  const all =
    shift === 0 ? own : [...shiftFaults(paper, reading, actsMoved(paper, reading, own)), ...own];
  const faults = withClaims(paper.scene, all);
  return { spec, shift, carried, reads, short, written, faults };
}

function actAt({ scene }: Paper, line: number, at: number): number | undefined {
  return writtenBy(scene.position.paper, line, at);
}

function actsAt(paper: Paper, lines: readonly number[], at: number): number[] {
  const acts: number[] = [];
  for (const line of lines) {
    const act = actAt(paper, line, at);
    if (act !== undefined) acts.push(act);
  }
  return acts;
}

/** The actions that wrote what stands right on these lines. */
function actsFrom(
  paper: Paper,
  lines: readonly number[],
  first: number,
  faults: readonly Fault[],
): number[] {
  return placesOf(paper.scene, lines)
    .filter((at) => at >= first && !faults.some((fault) => fault.at === at))
    .flatMap((at) => actsAt(paper, lines, at));
}

/** The actions that wrote what stands right, but for the shift. */
function actsMoved(
  paper: Paper,
  { spec, shift }: LineReading,
  own: readonly Fault[],
): readonly number[] {
  const first = Math.min(spec.lowest + shift, spec.lowest);
  return [
    ...actsFrom(paper, [spec.line], first, own),
    ...(spec.columns.carrying ? actsFrom(paper, spec.carries, 0, own) : []),
  ];
}

const NO_ACTS: readonly number[] = [];

function shiftFaults(
  paper: Paper,
  { spec, shift, reads }: LineReading,
  acts: readonly number[],
): readonly Fault[] {
  // A line without placeholders stands too far right only where zeros at the end were left out.
  if (shift < 0 && spec.lowest === 0) return NO_FAULTS;
  const { plan } = paper.scene;
  const first = spec.lowest + shift;
  if (shift < 0) {
    const given = paper.digits[first] ?? null;
    const faults: Fault[] = [];
    for (let at = first; at < first - shift; at += 1) {
      const step = zeroStepOf(plan, spec, at);
      faults.push({ step, at: first, acts, given, due: 0, missing: false });
    }
    return faults;
  }
  const at = paper.digits[spec.lowest] !== undefined ? spec.lowest : first;
  const given = paper.digits[at] ?? null;
  const due = reads[0]?.due ?? 0;
  return [{ step: zeroStepOf(plan, spec, 0), at, acts, given, due, missing: false }];
}

function placeholderFaults(paper: Paper, spec: LineSpec, shift: number): readonly Fault[] {
  let faults = NO_FAULTS;
  for (let at = 0; at < Math.min(spec.lowest, spec.lowest + shift); at += 1) {
    const given = paper.digits[at] ?? 0;
    if (given === 0) continue;
    const acts = actsAt(paper, [spec.line], at);
    const step = zeroStepOf(paper.scene.plan, spec, at);
    faults = [...faults, { step, at, acts, given, due: 0, missing: false }];
  }
  return faults;
}

function columnFaults(
  paper: Paper,
  { spec, shift, carried, reads }: LineReading,
  before: readonly Fault[],
): readonly Fault[] {
  let faults: Fault[] | null = null;
  for (let column = 0; column < reads.length; column += 1) {
    const { mark, carry } = reads[column]!;
    const missing = mark === 'missing' && spec.progress.final;
    if (carry !== 'wrong' && mark !== 'wrong' && !missing) continue;
    const { given, due, noted, carryDue } = reads[column]!;
    faults ??= before.slice();
    const step = digitStepOf(paper.scene.plan, spec, column);
    if (carry === 'wrong') {
      const at = spec.lowest + column + carried;
      const acts = actsAt(paper, spec.carries, at);
      faults.push({ step, at, acts, given: noted, due: carryDue, missing: false, carry: true });
    }
    if (mark !== 'wrong' && !missing) continue;
    const at = spec.lowest + column + shift;
    const acts = given === null ? [] : actsAt(paper, [spec.line], at);
    faults.push({ step, at, acts, given, due, missing: given === null });
  }
  return faults ?? before;
}
