import type { Line } from '../mat/action.ts';
import type { Problem } from '../problem.ts';
import { type Beliefs, believed } from './beliefs.ts';
import type { Hand } from './hand.ts';
import { type AddendsAt, type LineWork, workRow, workSum } from './written.ts';

/** A row as it stands on paper: what is at each place from the lowest on, the small figures over it. */
export interface StandingRow {
  readonly row: number;
  /** Places below its own digits. */
  readonly shift: number;
  readonly places: readonly (number | null)[];
  readonly notes: LineWork['notes'];
}

/** The written algorithm as the beliefs have it; slips are the hand's. */
export function playPaper(problem: Problem, beliefs: Beliefs, hand: Hand): void {
  const rows = playRows(problem, beliefs, hand);
  if (problem.multiplier.digits.length > 1) playSum(problem, beliefs, hand, rows);
  playPoint(problem, beliefs, hand);
  hand.act({ do: 'finish', what: 'product' });
  hand.act({ do: 'finish', what: 'problem' });
}

/** Whether a row is worked: one that makes nothing is left out. */
export function worksRow(beliefs: Beliefs, problem: Problem, row: number): boolean {
  if (beliefs.works === undefined) return true;
  const [across, up] = [problem.multiplicand.digits, problem.multiplier.digits];
  return believed(beliefs, 'works', { row, column: 0, across, up }, true);
}

/** A single row is the product, and takes its place. */
export function lineOfRow(problem: Problem, index: number): { line: Line; carries: Line } {
  const line: Line = problem.multiplier.digits.length === 1 ? 'product' : `partial:${index}`;
  return { line, carries: `carry:${index}` };
}

function playRows(problem: Problem, beliefs: Beliefs, hand: Hand): StandingRow[] {
  const [across, up] = [problem.multiplicand.digits, problem.multiplier.digits];
  const order = [...up.keys()];
  if (hand.habits.rows === 'topFirst') order.reverse();
  const standing: StandingRow[] = [];
  let before: readonly number[] = [];
  for (const row of order) {
    if (!worksRow(beliefs, problem, row)) continue;
    const earlier = before;
    const made = workRow(beliefs, { across, up, row, earlier: () => earlier });
    if (up.length > 1 && made.digits.every((digit) => digit === 0)) continue;
    const units = standing.find((each) => each.row === 0);
    const first = units === undefined ? 0 : units.places.length - units.shift;
    const length = made.digits.length;
    const shift = shiftOf(beliefs, { row, across, up, length, first });
    standing.push(writeRow(problem, hand, made, { row, shift, index: standing.length }));
    before = made.handed;
    if (up.length > 1) hand.act({ do: 'finish', what: `row:${row}` });
  }
  return standing;
}

export function shiftOf(
  beliefs: Beliefs,
  at: Parameters<NonNullable<Beliefs['shift']>>[0],
): number {
  return Math.max(0, believed(beliefs, 'shift', at, at.row));
}

function writeRow(
  problem: Problem,
  hand: Hand,
  made: LineWork,
  at: { readonly row: number; readonly shift: number; readonly index: number },
): StandingRow {
  const { line, carries } = lineOfRow(problem, at.index);
  if (line !== 'product') hand.act({ do: 'begin', line, row: at.row });
  const shift = line === 'product' ? 0 : at.shift;
  const places: (number | null)[] = [];
  for (let index = 0; index < shift; index += 1) {
    const zero = hand.habits.placeholders === 'written' ? hand.digit(0) : null;
    places.push(zero);
    if (zero !== null) put(problem, hand, line, index, zero);
  }
  places.push(...writeLine(problem, hand, made, { line, carries, shift }));
  const noted = hand.habits.carries === 'noted' ? made.notes : [];
  const notes = noted.map((note) => ({ at: note.at + shift, digit: note.digit }));
  return { row: at.row, shift, places, notes };
}

function put(problem: Problem, hand: Hand, line: Line, index: number, digit: number): void {
  const { mat } = problem;
  if (index < mat.rows + mat.columns) {
    hand.act({ do: 'write', line, place: mat.origin + index, digit });
  }
}

/** Digit by digit from the right, each small figure before the digit that it feeds. */
export function writeLine(
  problem: Problem,
  hand: Hand,
  made: LineWork,
  at: { readonly line: Line; readonly carries: Line; readonly shift: number },
): number[] {
  return made.digits.map((meant, index) => {
    for (const note of made.notes) {
      if (note.at !== index || hand.habits.carries !== 'noted') continue;
      put(problem, hand, at.carries, at.shift + index, note.digit);
    }
    const digit = hand.digit(meant);
    put(problem, hand, at.line, at.shift + index, digit);
    return digit;
  });
}

/** The columns of the rows that stand on paper. */
export function addendsOf(rows: readonly StandingRow[], count: number): readonly AddendsAt[] {
  const columns: { digits: (number | null)[]; notes: number[] }[] = [];
  for (const { row, places } of rows)
    for (let at = 0; at < places.length; at += 1) {
      if (at === columns.length) columns.push({ digits: new Array(count).fill(null), notes: [] });
      columns[at]!.digits[row] = places[at]!;
    }
  for (const { notes } of rows) for (const { at, digit } of notes) columns[at]?.notes.push(digit);
  return columns;
}

/** The product as it is made from the rows: joined, or added. */
export function productOf(
  beliefs: Beliefs,
  rows: readonly StandingRow[],
  count: number,
  noted?: (at: number) => number | undefined,
): LineWork {
  const byRow = [...rows].sort((one, other) => one.row - other.row);
  const digits = byRow.map(({ places, shift }) => places.slice(shift).map((each) => each ?? 0));
  const joined = believed(beliefs, 'join', { rows: digits }, null);
  if (joined !== null) return { digits: joined, notes: [], handed: [] };
  return workSum(beliefs, addendsOf(rows, count), noted);
}

function playSum(
  problem: Problem,
  beliefs: Beliefs,
  hand: Hand,
  rows: readonly StandingRow[],
): void {
  const made = productOf(beliefs, rows, problem.multiplier.digits.length);
  writeLine(problem, hand, made, { line: 'product', carries: 'carry:product', shift: 0 });
}

/** The point is set when a number has one. */
export function playPoint(problem: Problem, beliefs: Beliefs, hand: Hand): void {
  const { multiplicand, multiplier, mat } = problem;
  if (mat.origin === 0) return;
  const written = hand.actions.flatMap((action) =>
    action.do === 'write' && 'line' in action && action.line === 'product' ? [action.digit] : [],
  );
  const at = { places: [-multiplicand.lowest, -multiplier.lowest] as const, written };
  const meant = believed(beliefs, 'point', at, -mat.origin);
  const places = hand.slips() ? meant + 1 : meant;
  const most = mat.rows + mat.columns - 1;
  hand.act({ do: 'point', on: 'product', places: Math.min(most, Math.max(0, places)) });
}
