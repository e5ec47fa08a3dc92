import type { Line } from '../../mat/action.ts';
import type { Problem } from '../../problem.ts';
import type { Beliefs } from '../../pupils/beliefs.ts';
import { type StandingRow, shiftOf, worksRow } from '../../pupils/paper.ts';
import { type LineWork, workRow } from '../../pupils/written.ts';
import type { DoneWork } from '../done.ts';
import { type Aligned, readAligned } from './aligned.ts';
import type { Expectation } from './evidence.ts';
import { type PaperSeen, type PlaceDigits, topOf } from './first-written.ts';
import { expectLine, type LineSeen } from './line.ts';

/** A row that the child wrote: as first written, and as it stands in the end. */
export interface RowSeen {
  readonly row: number;
  readonly digits: PlaceDigits;
  readonly notes: PlaceDigits;
  readonly standing: PlaceDigits;
}

/** The rows in the order of their lines. */
export function rowsSeen({ problem, position }: DoneWork, paper: PaperSeen): RowSeen[] {
  const single = problem.multiplier.digits.length === 1;
  const lines: readonly (readonly [Line, number])[] = single
    ? [[paper.first('product').size > 0 ? 'product' : 'partial:0', 0]]
    : Object.entries(position.paper.begun).map(([line, row]) => [line as Line, row]);
  return [...lines]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .flatMap(([line, row]) => {
      const index = line === 'product' ? '0' : line.slice('partial:'.length);
      const notes = paper.first(`carry:${index}` as Line);
      const digits = paper.first(line);
      return digits.size === 0 ? [] : [{ row, digits, notes, standing: paper.standing(line) }];
    });
}

interface RowsRead {
  readonly expectations: readonly Expectation[];
  readonly standing: readonly StandingRow[];
}

/** What a row is worked beside: the carries of the row before, the length of the units row. */
interface Beside {
  readonly earlier: readonly number[];
  readonly first: number;
}

export function readRows(
  problem: Problem,
  beliefs: Beliefs,
  rows: readonly RowSeen[],
  over: boolean,
): RowsRead {
  const expectations: Expectation[] = [];
  const standing: StandingRow[] = [];
  let beside: Beside = { earlier: [], first: 0 };
  for (const seen of rows) {
    const read = readRow(problem, beliefs, seen, beside, over);
    expectations.push(...ofWorkedRow(problem, beliefs, seen.row, read));
    standing.push(standingRow(seen, read.shift));
    const first = seen.row === 0 ? topOf(seen.digits) + 1 : beside.first;
    beside = { earlier: read.made.handed, first };
  }
  const missing = [...problem.multiplier.digits.keys()].filter(
    (row) => over && !rows.some((seen) => seen.row === row),
  );
  const left = missing.flatMap((row) => ofMissingRow(problem, beliefs, row, beside));
  return { expectations: [...expectations, ...left], standing };
}

function standingRow({ row, standing, notes }: RowSeen, shift: number): StandingRow {
  const places = Array.from({ length: topOf(standing) + 1 }, (_, at) => standing.get(at) ?? null);
  return { row, shift, places, notes: [...notes].map(([at, digit]) => ({ at, digit })) };
}

function makesNothing({ digits }: LineWork): boolean {
  return digits.every((digit) => digit === 0);
}

function worked(problem: Problem, row: number, given: boolean, expected: boolean): Expectation {
  const step = `row:${row}:${problem.mat.origin + row}`;
  return { key: `works:${row}`, step, given: Number(given), expected: Number(expected), among: 2 };
}

function ofWorkedRow(
  problem: Problem,
  beliefs: Beliefs,
  row: number,
  { made, expectations }: Aligned,
): Expectation[] {
  if (!worksRow(beliefs, problem, row)) {
    const none = expectations.map((each) => ({ ...each, expected: null }));
    return [...none, worked(problem, row, true, false)];
  }
  if (!makesNothing(made)) return [...expectations, worked(problem, row, true, true)];
  // A row that makes nothing may be left out or filled with zeros.
  return expectations.flatMap((each) =>
    each.given === null || each.key.startsWith('shift') ? [] : [{ ...each, expected: 0 }],
  );
}

function ofMissingRow(
  problem: Problem,
  beliefs: Beliefs,
  row: number,
  beside: Beside,
): Expectation[] {
  if (makesNothing(rowWork(problem, beliefs, row, beside))) return [];
  return [worked(problem, row, false, worksRow(beliefs, problem, row))];
}

function rowWork(
  { multiplicand, multiplier }: Problem,
  beliefs: Beliefs,
  row: number,
  { earlier }: Beside,
  noted?: (at: number) => number | undefined,
): LineWork {
  const at = { across: multiplicand.digits, up: multiplier.digits, row, earlier };
  return workRow(beliefs, at, noted);
}

function readRow(
  problem: Problem,
  beliefs: Beliefs,
  seen: RowSeen,
  beside: Beside,
  over: boolean,
): Aligned {
  const [across, up] = [problem.multiplicand.digits, problem.multiplier.digits];
  const { row } = seen;
  const { origin } = problem.mat;
  const stepAt = (at: number) => (at < row ? `zero:${row}:${at}` : `row:${row}:${origin + at}`);
  const line: LineSeen = { ...seen, over, name: `row:${row}`, stepAt };
  const made = (shift: number) =>
    rowWork(problem, beliefs, row, beside, (column) => seen.notes.get(column + shift));
  if (up.length === 1) {
    return { made: made(0), shift: 0, expectations: expectLine(line, made(0), 0) };
  }
  const due = (length: number) =>
    shiftOf(beliefs, { row, across, up, length, first: beside.first });
  return readAligned({ seen: line, row, origin, due, made });
}
