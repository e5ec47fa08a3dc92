import type { Line } from '../../mat/action.ts';
import { MAT_LIMITS } from '../../mat/geometry.ts';
import type { Problem } from '../../problem.ts';
import { type Beliefs, RIGHT_WAY } from '../../pupils/beliefs.ts';
import { shiftOf, worksRow } from '../../pupils/paper.ts';
import { type LineWork, workRow } from '../../pupils/written.ts';
import { type ByList, keepAt, keptAt, type Spelled } from '../by-list.ts';
import type { DoneWork } from '../done.ts';
import { type Aligned, readAligned, SHIFT_KEY, stepsOfRow } from './aligned.ts';
import {
  type Answer,
  type Beyond,
  type Expectation,
  factsWith,
  type Group,
  ROOM,
  type Sighting,
  type Strand,
  sighting,
  type Topic,
} from './evidence.ts';
import { type FirstDone, firstOn, isOver } from './first-done.ts';
import { expectLine, type LineSeen, lineSeen, spellLine, spellNotes } from './line.ts';

/** A row that the child wrote, as first written. */
export interface RowSeen {
  readonly row: number;
  readonly line: Line;
  readonly seen: LineSeen;
  /** Spells its small figures out. */
  readonly noted: Spelled;
  /** The row written before it. */
  readonly before: RowSeen | null;
  /** Digits of the units row, if it was written before (0: it was not). */
  readonly first: number;
  /** Spells out this row. */
  readonly key: Spelled;
  /** The rows before it. */
  readonly beyond: Beyond;
  /** As the right way reads it; null: not asked for yet. */
  usual: Usual | null;
}

interface Usual {
  readonly read: Aligned;
  readonly group: Group;
}

/** The first line written for each row, in the order of the lines. */
export function rowsSeen(work: DoneWork, written: FirstDone): RowSeen[] {
  const rows: RowSeen[] = [];
  let [before, first]: [RowSeen | null, number] = [null, 0];
  for (const [line, row] of linesOf(work, written)) {
    const index = line === 'product' ? '0' : line.slice('partial:'.length);
    const { digits } = firstOn(written, line);
    if (digits.length === 0 || rows.some((each) => each.row === row)) continue;
    const seen = lineSeen(digits, firstOn(written, `carry:${index}` as Line), isOver(work));
    const key = [row];
    spellLine(key, seen);
    const noted: number[] = [];
    spellNotes(noted, seen.notes);
    const beyond = beyondIn(before);
    before = { row, line, seen, noted, before, first, key, beyond, usual: null };
    rows.push(before);
    if (row === 0) first = digits.length;
  }
  return rows;
}

function beyondIn(before: RowSeen | null): Beyond {
  return { key: before === null ? NOTHING : rowsKey(before), looked: false };
}

const NOTHING: Spelled = [];

/** Spells out a row and all before it. */
export function rowsKey({ key, beyond }: RowSeen): Spelled {
  return beyond.key.concat(key);
}

const ROWS = Array.from({ length: MAT_LIMITS.rows.most }, (_, index) => index);
/** All lines that may be begun, in their order. */
const LINES: readonly Line[] = [
  ...ROWS.map((index): Line => `carry:${index}`),
  'carry:product',
  ...ROWS.map((index): Line => `partial:${index}`),
  'product',
];

function linesOf({ problem, position }: DoneWork, written: FirstDone): (readonly [Line, number])[] {
  if (problem.multiplier.digits.length === 1)
    return [[firstOn(written, 'product').digits.length > 0 ? 'product' : 'partial:0', 0]];
  const { begun } = position.paper;
  const lines: (readonly [Line, number])[] = [];
  for (const line of LINES) {
    const row = begun[line];
    if (row !== undefined) lines.push([line, row]);
  }
  return lines;
}

/** A strand for each digit of the multiplier whose row was written, or should have been. */
export function rowStrands(work: DoneWork, rows: readonly RowSeen[]): Strand[] {
  const last = rows.at(-1) ?? null;
  const over = isOver(work);
  return work.problem.multiplier.digits.flatMap((_, row): Strand[] => {
    const seen = rows.find((each) => each.row === row);
    if (seen !== undefined) return [[sighting(ROW, seen.key, seen, seen.beyond)]];
    return over ? [[missingRow(row, last)]] : [];
  });
}

/** The row as the right way reads it: worked out once for each row seen. */
function usualOf(problem: Problem, seen: RowSeen): Usual {
  if (seen.usual === null) {
    const read = readRow(problem, RIGHT_WAY, seen);
    seen.usual = { read, group: ofWorkedRow(problem, seen.row, true, read) };
  }
  return seen.usual;
}

/** The row as the beliefs read it: where it begins, what is due. */
export function rowRead(problem: Problem, seen: RowSeen, beliefs: Beliefs): Aligned {
  const { read } = usualOf(problem, seen);
  return beliefs === RIGHT_WAY ? read : readRow(problem, beliefs, seen, read);
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
  readonly beyond: Beyond;
}

const MISSING: Topic<MissingRow> = {
  bears: ROW.bears,
  facts: factsOfRow,
  expect(problem, { row, last, beyond }, beliefs) {
    const { multiplicand, multiplier } = problem;
    const made = workRow(beliefs, {
      across: multiplicand.digits,
      up: multiplier.digits,
      row,
      earlier() {
        beyond.looked = true;
        return last === null ? [] : handedOnIn(problem, last, beliefs);
      },
    });
    return makesNothing(made) ? [] : [worked(problem, row, false, worksRow(beliefs, problem, row))];
  },
};

function missingRow(row: number, last: RowSeen | null): Sighting {
  const beyond = beyondIn(last);
  return sighting(MISSING, [row], { row, last, beyond }, beyond);
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

function expecting({ key, step, given, among }: Expectation, expected: Answer): Expectation {
  return { key, step, given, expected, among };
}

function ofWorkedRow(
  problem: Problem,
  row: number,
  works: boolean,
  { made, group }: Aligned,
): Expectation[] {
  if (!works) {
    const none = group.map((each) => expecting(each, null));
    return [...none, worked(problem, row, true, false)];
  }
  if (!makesNothing(made)) return [...group, worked(problem, row, true, true)];
  // A row that makes nothing may be left out or filled with zeros.
  return group.flatMap((each) =>
    each.given === null || each.key === SHIFT_KEY ? [] : [expecting(each, 0)],
  );
}

/** What beliefs make of the rows of a problem, by row, shift and small figures. */
const made = new WeakMap<Beliefs, WeakMap<Problem, ByList<LineWork>>>();
/** More is forgotten all at once. */
const MOST_MADE = 200;

function madeBy(beliefs: Beliefs, problem: Problem): ByList<LineWork> {
  const own = made.get(beliefs) ?? new WeakMap<Problem, ByList<LineWork>>();
  made.set(beliefs, own);
  let rows = own.get(problem);
  if (rows === undefined || rows.size >= MOST_MADE) {
    rows = new Map();
    own.set(problem, rows);
  }
  return rows;
}

/**
 * What the beliefs make of a row, its own digits beginning after so many empty places. A class works the same
 * rows and notes the same small figures: it is worked out once, unless what was handed on in the row before
 * was looked at, which each child may have otherwise.
 */
function rowMade(problem: Problem, beliefs: Beliefs, seen: RowSeen, shift: number): LineWork {
  const { row, noted, before, beyond } = seen;
  const { notes } = seen.seen;
  const rows = madeBy(beliefs, problem);
  const key = notes.places.length === 0 ? [row] : [row, shift].concat(noted);
  const known = keptAt(rows, key);
  if (known !== undefined) return known;
  const isLooking = beyond.looked;
  beyond.looked = false;
  const line = workRow(
    beliefs,
    {
      across: problem.multiplicand.digits,
      up: problem.multiplier.digits,
      row,
      earlier() {
        beyond.looked = true;
        return before === null ? [] : handedOnIn(problem, before, beliefs);
      },
    },
    (place) => notes.digits[place + shift],
  );
  if (!beyond.looked) keepAt(rows, key, line);
  beyond.looked ||= isLooking;
  return line;
}

/** `usual`: as the right way reads it. */
function readRow(
  problem: Problem,
  beliefs: Beliefs,
  seen: RowSeen,
  usual: Aligned | null = null,
): Aligned {
  const [across, up] = [problem.multiplicand.digits, problem.multiplier.digits];
  const { origin } = problem.mat;
  const { row, first } = seen;
  if (up.length === 1) {
    const line = rowMade(problem, beliefs, seen, 0);
    const group = expectLine(seen.seen, line, 0, stepsOfRow(row, origin));
    return { made: line, shift: 0, due: 0, group };
  }
  const line = {
    seen: seen.seen,
    row,
    origin,
    due(length: number) {
      // Whoever has rows begin elsewhere may go by the units row.
      if (beliefs.shift !== undefined) seen.beyond.looked = true;
      return shiftOf(beliefs, { row, across, up, length, first });
    },
    made(shift: number) {
      return rowMade(problem, beliefs, seen, shift);
    },
  };
  return readAligned(line, usual);
}
