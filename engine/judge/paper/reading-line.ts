import type { Line } from '../../mat/action.ts';
import type { Latched, Ledger, Scene } from '../scene.ts';
import { type ColumnRead, type Progress, readColumns, type Written } from './carrying.ts';
import { withClaims } from './claims.ts';
import type { Columns } from './columns.ts';
import { crossedOutOf, penOf } from './pens.ts';

/** What a line should hold, and which step answers for what. Places are counted from the origin. */
export interface LineSpec {
  /** Names what is read, for what stays right: `row:1`, `sum`. */
  readonly name: string;
  /** null: not begun. */
  readonly line: Line | null;
  readonly carries: readonly Line[];
  /** Where the lowest column stands; below it there are placeholders. */
  readonly lowest: number;
  readonly columns: Columns;
  readonly progress: Progress;
  /** Decimals of the product: zeros at their end may be left out. */
  readonly decimals: number;
  readonly digitStep: (column: number) => number;
  readonly zeroStep: (placeholder: number) => number;
  /** Answers for a line that stands too far left. */
  readonly surplusStep: number;
}

/** Something that is not as due. `at`: the place on paper, `acts`: the actions that wrote what it concerns. */
export interface Fault {
  readonly step: number;
  readonly at: number;
  readonly acts: readonly number[];
  readonly given: number | null;
  readonly due: number;
  readonly missing: boolean;
  /** It is the carry that is wrong. */
  readonly carry?: true;
}

export interface LineReading {
  readonly spec: LineSpec;
  /** How far the digits stand to the left of where they are due. */
  readonly shift: number;
  /** The same for the carries. */
  readonly carried: number;
  readonly reads: readonly ColumnRead[];
  readonly faults: readonly Fault[];
}

interface Paper {
  readonly scene: Scene;
  readonly digits: ReadonlyMap<number, number>;
  readonly carries: ReadonlyMap<number, number>;
  readonly highest: number;
}

function linesOf({ line }: LineSpec): readonly Line[] {
  return line === null ? [] : [line];
}

function digitsOf({ plan, position }: Scene, lines: readonly Line[]): Map<number, number> {
  const found = new Map<number, number>();
  for (const line of lines) {
    for (const [place, digit] of Object.entries(position.paper.lines[line] ?? {})) {
      found.set(Number(place) - plan.problem.mat.origin, digit);
    }
  }
  return found;
}

function paperOf(scene: Scene, spec: LineSpec): Paper {
  const digits = digitsOf(scene, linesOf(spec));
  const carries = digitsOf(scene, spec.columns.carrying ? spec.carries : []);
  return { scene, digits, carries, highest: Math.max(-1, ...digits.keys(), ...carries.keys()) };
}

/** A carry as it stands, or as it stood when the digit that it feeds was written. */
function carryOf(paper: Paper, spec: LineSpec, at: number, fed: number): number | undefined {
  const stands = paper.carries.get(at);
  if (stands !== undefined || !spec.columns.carrying) return stands;
  const { ledger, plan } = paper.scene;
  const [penned = Number.POSITIVE_INFINITY] = actsAt(paper, linesOf(spec), fed);
  for (const line of spec.carries) {
    const key = crossedOutOf(line, plan.problem.mat.origin + at);
    if (ledger.pens[key]! > penned) return ledger.latched[key]!.given as number;
  }
  return undefined;
}

/** The line as it reads best: at the shift with the fewest wrong steps. */
export function readLine(scene: Scene, spec: LineSpec): LineReading {
  const paper = paperOf(scene, spec);
  let best = readAt(paper, spec, 0, 0);
  if (best.faults.length === 0 || paper.digits.size === 0) return best;
  // Zeros at the end are left out by those who are done: a line that lacks digits and has none wrong goes on where it is.
  const unfinished = spec.lowest === 0 && best.faults.every(({ missing }) => missing);
  const most = Math.max(...paper.digits.keys()) - spec.lowest + 1;
  for (let shift = -Math.max(spec.lowest, spec.decimals); shift <= most; shift += 1) {
    if (shift === 0 || !mayShift(paper, spec, shift) || (shift < 0 && unfinished)) continue;
    // Carries stand over the digits as they are written, or where they were due.
    for (const carried of paper.carries.size === 0 ? [shift] : [shift, 0]) {
      const other = readAt(paper, spec, shift, carried);
      if (explains(paper, other) && isBetter(other, best)) best = other;
    }
  }
  return best;
}

/** Too far left only behind zeros or nothing; too far right only for lack of placeholders or of zeros at the end. */
function mayShift(paper: Paper, spec: LineSpec, shift: number): boolean {
  for (let at = spec.lowest; at < spec.lowest + shift; at += 1) {
    if ((paper.digits.get(at) ?? 0) > 0) return false;
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
  if (shift > 0) return begins || (paper.digits.has(spec.lowest) && reads[0]?.mark !== 'leftOut');
  if (spec.lowest > 0) return begins || isFromTheLeft(paper, spec, spec.lowest + shift);
  const zeros = reads.slice(0, -shift).every(({ mark }) => mark === 'leftOut');
  const shown = reads.some(({ mark, given }) => mark === 'right' && (given ?? 0) > 0);
  return spec.progress.final && zeros && shown && !faults.some(({ missing }) => missing);
}

/** The lowest of the digits from there up was written after the highest. */
function isFromTheLeft(paper: Paper, spec: LineSpec, first: number): boolean {
  const places = [...paper.digits.keys()].filter((at) => at >= first);
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

/** What was right in one reading of the line is not so in another. */
function digitKey({ name }: LineSpec, shift: number, at: number): string {
  return `${name}@${shift} digit ${at}`;
}

function endKey({ name }: LineSpec, shift: number): string {
  return `${name}@${shift} end`;
}

function carryKey({ name }: LineSpec, shift: number, carried: number, at: number): string {
  return `${name}@${shift} carry ${at} ${carried}`;
}

function writtenAt(paper: Paper, spec: LineSpec, shift: number, carried: number): Written {
  const { scene, digits, highest } = paper;
  const { latched } = scene.ledger;
  const at = (column: number) => spec.lowest + column + shift;
  const carryAt = (column: number) => spec.lowest + column + carried;
  const stayed = (column: number): number | null => {
    const before = latched[digitKey(spec, shift, at(column))];
    const now = digits.get(at(column));
    return now !== undefined && before?.given === now ? (before.hands ?? 0) : null;
  };
  const end = Number(latched[endKey(spec, shift)]?.given ?? 0);
  const kept = Array.from({ length: end }, (_, column) => stayed(column));
  return {
    ended: end > 0 && !kept.includes(null) ? end : null,
    digit: (column) => digits.get(at(column)),
    carry: (column) => carryOf(paper, spec, carryAt(column), at(column)),
    stayed,
    carryStayed: (column) => {
      const now = carryOf(paper, spec, carryAt(column), at(column));
      const before = latched[carryKey(spec, shift, carried, carryAt(column))];
      return now !== undefined && before?.given === now;
    },
    highest: highest - spec.lowest - Math.min(shift, carried),
    decimals: spec.decimals,
  };
}

function readAt(paper: Paper, spec: LineSpec, shift: number, carried: number): LineReading {
  const written = writtenAt(paper, spec, shift, carried);
  const reads = readColumns(spec.columns, written, spec.progress);
  const own = [
    ...placeholderFaults(paper, spec, shift),
    ...columnFaults(paper, spec, { shift, carried }, reads),
  ];
  const faults = [...shiftFaults(paper, spec, shift, { reads, own }), ...own];
  return { spec, shift, carried, reads, faults: withClaims(paper.scene, faults) };
}

function actsAt({ scene }: Paper, lines: readonly Line[], at: number): number[] {
  return lines.flatMap((line) => {
    const act = scene.ledger.pens[penOf(line, scene.plan.problem.mat.origin + at)];
    return act === undefined ? [] : [act];
  });
}

/** The actions that wrote what stands right on these lines. */
function actsFrom(
  paper: Paper,
  lines: readonly Line[],
  places: readonly number[],
  first: number,
  faults: readonly Fault[],
): number[] {
  return places
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
  if (shift === 0 || (shift < 0 && spec.lowest === 0)) return [];
  const first = spec.lowest + shift;
  const acts = [
    ...actsFrom(paper, linesOf(spec), [...paper.digits.keys()], Math.min(first, spec.lowest), own),
    ...actsFrom(paper, spec.carries, [...paper.carries.keys()], 0, own),
  ];
  if (shift < 0) {
    const given = paper.digits.get(first) ?? null;
    const fault = { at: first, acts, given, due: 0, missing: false };
    return Array.from({ length: -shift }, (_, more) => ({
      ...fault,
      step: spec.zeroStep(first + more),
    }));
  }
  const at = paper.digits.has(spec.lowest) ? spec.lowest : first;
  const given = paper.digits.get(at) ?? null;
  const due = reads[0]?.due ?? 0;
  return [{ step: spec.surplusStep, at, acts, given, due, missing: false }];
}

function placeholderFaults(paper: Paper, spec: LineSpec, shift: number): Fault[] {
  const faults: Fault[] = [];
  for (let at = 0; at < Math.min(spec.lowest, spec.lowest + shift); at += 1) {
    const given = paper.digits.get(at) ?? 0;
    if (given === 0) continue;
    const acts = actsAt(paper, linesOf(spec), at);
    faults.push({ step: spec.zeroStep(at), at, acts, given, due: 0, missing: false });
  }
  return faults;
}

function columnFaults(
  paper: Paper,
  spec: LineSpec,
  { shift, carried }: { shift: number; carried: number },
  reads: readonly ColumnRead[],
): Fault[] {
  const faults: Fault[] = [];
  for (const [column, { mark, carry, given, due, carryDue }] of reads.entries()) {
    const at = spec.lowest + column + shift;
    const step = spec.digitStep(column);
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
    const missing = mark === 'missing' && spec.progress.final;
    if (mark !== 'wrong' && !missing) continue;
    const acts = given === null ? [] : actsAt(paper, linesOf(spec), at);
    faults.push({ step, at, acts, given, due, missing: given === null });
  }
  return faults;
}

/** What reads right now stays right, whatever is written elsewhere later. */
export function withLatches(
  ledger: Ledger,
  { spec, shift, carried, reads }: LineReading,
  follows: (column: number, given: number) => boolean,
): Ledger {
  const latched: Record<string, Latched> = {};
  for (const [column, { mark, given, carry, noted, hands }] of reads.entries()) {
    if (mark === 'right' && carry !== 'wrong' && given !== null) {
      const key = digitKey(spec, shift, spec.lowest + column + shift);
      latched[key] = { given, follows: follows(column, given), hands };
    }
    if (carry === 'right' && noted !== null) {
      const key = carryKey(spec, shift, carried, spec.lowest + column + carried);
      latched[key] = { given: noted, follows: false };
    }
  }
  const end = reads.findIndex(({ mark }) => mark !== 'right');
  const digits = end < 0 ? reads.length : end;
  const whole = digits > 0 && reads.slice(digits).every(({ mark }) => mark === 'absent');
  const complete = digits >= spec.columns.needed && hasNoCarry(reads[digits - 1]);
  if (whole && complete) latched[endKey(spec, shift)] = { given: digits, follows: false };
  return { ...ledger, latched: { ...ledger.latched, ...latched } };
}

function hasNoCarry(last: ColumnRead | undefined): boolean {
  return last !== undefined && (last.hands & 1) === 1;
}
