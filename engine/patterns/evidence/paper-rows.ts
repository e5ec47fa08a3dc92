import type { Line } from '../../mat/action.ts';
import type { Problem } from '../../problem.ts';
import { type Beliefs, RIGHT_WAY } from '../../pupils/beliefs.ts';
import { shiftOf, worksRow } from '../../pupils/paper.ts';
import { type LineWork, type RowAt, workRow } from '../../pupils/written.ts';
import type { DoneWork } from '../done.ts';
import { type Aligned, readAligned, SHIFT_KEY, stepsOfRow } from './aligned.ts';
import {
  type Expectation,
  factsWith,
  type Group,
  ROOM,
  type Sighting,
  type Strand,
  sighting,
  type Topic,
} from './evidence.ts';
import { isOver, type PaperSeen } from './first-written.ts';
import { expectLine, type LineSeen, lineKey, lineSeen } from './line.ts';

/** A row that the child wrote, as first written. */
export interface RowSeen {
  readonly row: number;
  readonly line: Line;
  readonly seen: LineSeen;
  /** The row written before it. */
  readonly before: RowSeen | null;
  /** Digits of the units row, if it was written before (0: it was not). */
  readonly first: number;
  /** Spells out this row and all before it. */
  readonly key: string;
}

/** The first line written for each row, in the order of the lines. */
export function rowsSeen(work: DoneWork, paper: PaperSeen): RowSeen[] {
  const rows: RowSeen[] = [];
  let [before, first]: [RowSeen | null, number] = [null, 0];
  for (const [line, row] of linesOf(work, paper)) {
    const index = line === 'product' ? '0' : line.slice('partial:'.length);
    const digits = paper.first(line);
    if (digits.size === 0 || rows.some((each) => each.row === row)) continue;
    const seen = lineSeen(digits, paper.first(`carry:${index}` as Line), isOver(work));
    const key: string = `${before?.key ?? ''}/${row}|${lineKey(seen)}`;
    before = { row, line, seen, before, first, key };
    rows.push(before);
    if (row === 0) first = seen.top + 1;
  }
  return rows;
}

function linesOf({ problem, position }: DoneWork, paper: PaperSeen): (readonly [Line, number])[] {
  if (problem.multiplier.digits.length === 1)
    return [[paper.first('product').size > 0 ? 'product' : 'partial:0', 0]];
  return Object.entries(position.paper.begun)
    .map(([line, row]) => [line as Line, row] as const)
    .sort(([one], [other]) => (one < other ? -1 : 1));
}

/** A strand for each digit of the multiplier whose row was written, or should have been. */
export function rowStrands(work: DoneWork, rows: readonly RowSeen[]): Strand[] {
  const last = rows.at(-1) ?? null;
  const over = isOver(work);
  return work.problem.multiplier.digits.flatMap((_, row): Strand[] => {
    const seen = rows.find((each) => each.row === row);
    if (seen !== undefined) return [[sighting(ROW, seen.key, seen)]];
    return over ? [[missingRow(row, last)]] : [];
  });
}

/** The row as the right way reads it: worked out once for each row seen. */
const usual = new WeakMap<RowSeen, { readonly read: Aligned; readonly group: Group }>();

function usualOf(problem: Problem, seen: RowSeen) {
  const known = usual.get(seen);
  if (known !== undefined) return known;
  const read = readRow(problem, RIGHT_WAY, seen);
  const own = { read, group: ofWorkedRow(problem, seen.row, true, read) };
  usual.set(seen, own);
  return own;
}

/** The row as the beliefs read it: where it begins, what is due. */
export function rowRead(problem: Problem, seen: RowSeen, beliefs: Beliefs): Aligned {
  const { read } = usualOf(problem, seen);
  return isUntouched(problem, beliefs, seen.row) ? read : readRow(problem, beliefs, seen, read);
}

const handed = new WeakMap<RowSeen, WeakMap<Beliefs, readonly number[]>>();

/** What the beliefs handed on in the row: worked out once for all columns of the next. */
function handedOnIn(problem: Problem, seen: RowSeen, beliefs: Beliefs): readonly number[] {
  const own = handed.get(seen) ?? new WeakMap<Beliefs, readonly number[]>();
  handed.set(seen, own);
  const known = own.get(beliefs);
  if (known !== undefined) return known;
  const made = rowRead(problem, seen, beliefs).made.handed;
  own.set(beliefs, made);
  return made;
}

function factsOfRow({ multiplicand, multiplier }: Problem, { row }: { readonly row: number }) {
  return factsWith(multiplier.digits[row]!, multiplicand.digits);
}

const ROW: Topic<RowSeen> = {
  bears: ['fact', 'partner', 'works', 'shift', 'column'],
  facts: factsOfRow,
  expect(problem, seen, beliefs) {
    const { read, group } = usualOf(problem, seen);
    const own = rowRead(problem, seen, beliefs);
    const works = worksRow(beliefs, problem, seen.row);
    return works && own === read ? group : ofWorkedRow(problem, seen.row, works, own);
  },
};

/** A row that nothing was written for, and the last row that was written. */
interface MissingRow {
  readonly row: number;
  readonly last: RowSeen | null;
}

const MISSING: Topic<MissingRow> = {
  bears: ROW.bears,
  facts: factsOfRow,
  expect(problem, { row, last }, beliefs) {
    const made = rowWork(problem, beliefs, row, last);
    return makesNothing(made) ? [] : [worked(problem, row, false, worksRow(beliefs, problem, row))];
  },
};

function missingRow(row: number, last: RowSeen | null): Sighting {
  return sighting(MISSING, `${row}${last?.key}`, { row, last });
}

/** Beliefs about facts alone leave a row that has none of these facts. */
function isUntouched(
  { multiplicand, multiplier }: Problem,
  beliefs: Beliefs,
  row: number,
): boolean {
  const { fact, column, partner, shift, works } = beliefs;
  if (column || partner || shift || works) return false;
  const b = multiplier.digits[row]!;
  return multiplicand.digits.every((a) => (fact?.({ a, b }, a * b) ?? a * b) === a * b);
}

function makesNothing({ digits }: LineWork): boolean {
  return digits.every((digit) => digit === 0);
}

const WORKS_KEY = ROOM - 2;

function worked(problem: Problem, row: number, given: boolean, expected: boolean): Expectation {
  const step = `row:${row}:${problem.mat.origin + row}`;
  const [did, meant] = [Number(given), Number(expected)];
  return { key: WORKS_KEY, step, given: did, expected: meant, among: 2 };
}

function ofWorkedRow(
  problem: Problem,
  row: number,
  works: boolean,
  { made, group }: Aligned,
): Expectation[] {
  if (!works) {
    const none = group.map((each) => ({ ...each, expected: null }));
    return [...none, worked(problem, row, true, false)];
  }
  if (!makesNothing(made)) return [...group, worked(problem, row, true, true)];
  // A row that makes nothing may be left out or filled with zeros.
  return group.flatMap((each) =>
    each.given === null || each.key === SHIFT_KEY ? [] : [{ ...each, expected: 0 }],
  );
}

function rowWork(
  problem: Problem,
  beliefs: Beliefs,
  row: number,
  before: RowSeen | null,
  noted?: (at: number) => number | undefined,
): LineWork {
  const { multiplicand, multiplier } = problem;
  const at: RowAt = {
    across: multiplicand.digits,
    up: multiplier.digits,
    row,
    earlier: () => (before === null ? [] : handedOnIn(problem, before, beliefs)),
  };
  return workRow(beliefs, at, noted);
}

/** `usualRead`: as the right way reads it. */
function readRow(
  problem: Problem,
  beliefs: Beliefs,
  { row, seen, before, first }: RowSeen,
  usualRead?: Aligned,
): Aligned {
  const [across, up] = [problem.multiplicand.digits, problem.multiplier.digits];
  const { origin } = problem.mat;
  const { notes } = seen;
  if (up.length === 1) {
    const made = rowWork(problem, beliefs, row, before, (at) => notes.get(at));
    return { made, shift: 0, due: 0, group: expectLine(seen, made, 0, stepsOfRow(row, origin)) };
  }
  const line = {
    seen,
    row,
    origin,
    due: (length: number) => shiftOf(beliefs, { row, across, up, length, first }),
    made: (shift: number) => rowWork(problem, beliefs, row, before, (at) => notes.get(at + shift)),
  };
  return readAligned(line, usualRead);
}
