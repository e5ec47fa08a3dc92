import type { Line } from '../../mat/action.ts';
import type { Problem } from '../../problem.ts';
import { type Beliefs, RIGHT_WAY } from '../../pupils/beliefs.ts';
import { type StandingRow, shiftOf, worksRow } from '../../pupils/paper.ts';
import { type LineWork, workRow } from '../../pupils/written.ts';
import type { DoneWork } from '../done.ts';
import { type Aligned, readAligned } from './aligned.ts';
import { type Expectation, type Group, ROOM } from './evidence.ts';
import { isOver, type PaperSeen, type PlaceDigits, topOf } from './first-written.ts';
import { expectLine, type LineSeen, lineSeen } from './line.ts';

/** A row that the child wrote: as first written, and as it stands in the end. */
interface RowSeen extends LineSeen {
  readonly row: number;
  readonly standing: Omit<StandingRow, 'shift'>;
}

/** The rows in the order of their lines. */
function rowsSeen(work: DoneWork, paper: PaperSeen): RowSeen[] {
  const { problem, position } = work;
  const single = problem.multiplier.digits.length === 1;
  const lines: readonly (readonly [Line, number])[] = single
    ? [[paper.first('product').size > 0 ? 'product' : 'partial:0', 0]]
    : Object.entries(position.paper.begun).map(([line, row]) => [line as Line, row]);
  const { origin } = problem.mat;
  return [...lines]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .flatMap(([line, row]) => {
      const index = line === 'product' ? '0' : line.slice('partial:'.length);
      const notes = paper.first(`carry:${index}` as Line);
      const digits = paper.first(line);
      if (digits.size === 0) return [];
      const stepAt = (at: number) => (at < row ? `zero:${row}:${at}` : `row:${row}:${origin + at}`);
      const seen = lineSeen({ digits, notes, over: isOver(work), stepAt });
      return [{ ...seen, row, standing: standingRow(row, paper.standing(line), notes) }];
    });
}

/** What a row is worked beside: the carries of the row before, the length of the units row. */
interface Beside {
  readonly earlier: readonly number[];
  readonly first: number;
}

interface RowsRead {
  /** One for each digit of the multiplier. */
  readonly groups: readonly Group[];
  /** Empty places below each row that the child wrote. */
  readonly shifts: readonly number[];
}

export interface RowReader {
  readonly read: (beliefs: Beliefs) => RowsRead;
  /** The rows as they stand in the end, each beginning where it was read to begin. */
  readonly standing: (read: RowsRead) => readonly StandingRow[];
}

/** Reads the rows that the child wrote, by any beliefs. */
export function rowReader(work: DoneWork, paper: PaperSeen): RowReader {
  const { problem } = work;
  const rows = rowsSeen(work, paper);
  const all = [...problem.multiplier.digits.keys()];
  const missing = all.filter((row) => isOver(work) && !rows.some((seen) => seen.row === row));
  const usual = new Map<number, { readonly read: Aligned; readonly group: Group }>();
  const read = (beliefs: Beliefs): RowsRead => {
    const groups: Group[] = all.map(() => []);
    const shifts: number[] = [];
    let beside: Beside = { earlier: [], first: 0 };
    for (const seen of rows) {
      const asUsual = usual.get(seen.row);
      const own =
        asUsual !== undefined && isUntouched(problem, beliefs, seen.row)
          ? asUsual.read
          : readRow(problem, beliefs, seen, beside, asUsual?.read);
      const works = worksRow(beliefs, problem, seen.row);
      const group =
        works && own === asUsual?.read ? asUsual.group : ofWorkedRow(problem, seen.row, works, own);
      if (beliefs === RIGHT_WAY) usual.set(seen.row, { read: own, group });
      groups[seen.row] = group;
      shifts.push(own.shift);
      const first = seen.row === 0 ? seen.top + 1 : beside.first;
      beside = { earlier: own.made.handed, first };
    }
    for (const row of missing) groups[row] = ofMissingRow(problem, beliefs, row, beside);
    return { groups, shifts };
  };
  read(RIGHT_WAY);
  return {
    read,
    standing: ({ shifts }) => rows.map((row, at) => ({ ...row.standing, shift: shifts[at]! })),
  };
}

function standingRow(
  row: number,
  standing: PlaceDigits,
  notes: PlaceDigits,
): Omit<StandingRow, 'shift'> {
  const places = Array.from({ length: topOf(standing) + 1 }, (_, at) => standing.get(at) ?? null);
  return { row, places, notes: [...notes].map(([at, digit]) => ({ at, digit })) };
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

const SHIFT_KEY = ROOM - 1;
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
  usual: Aligned | undefined,
): Aligned {
  const [across, up] = [problem.multiplicand.digits, problem.multiplier.digits];
  const { row } = seen;
  const { origin } = problem.mat;
  const { notes } = seen;
  const { first } = beside;
  if (up.length === 1) {
    const only = rowWork(problem, beliefs, row, beside, (column) => notes.get(column));
    return { made: only, shift: 0, due: 0, group: expectLine(seen, only, 0) };
  }
  const line = {
    seen,
    row,
    origin,
    due: (length: number) => shiftOf(beliefs, { row, across, up, length, first }),
    made: (shift: number) =>
      rowWork(problem, beliefs, row, beside, (column) => notes.get(column + shift)),
  };
  return readAligned(line, usual);
}
