import type { Line } from '../../mat/action.ts';
import type { Problem } from '../../problem.ts';
import type { Beliefs } from '../../pupils/beliefs.ts';
import { productOf, type StandingRow, shiftOf, worksRow } from '../../pupils/paper.ts';
import { type LineWork, workRow } from '../../pupils/written.ts';
import type { DoneWork } from '../done.ts';
import { type Aligned, readAligned } from './aligned.ts';
import type { Expectation } from './evidence.ts';
import { isOver, type PaperSeen, type PlaceDigits, paperSeen, topOf } from './first-written.ts';
import { expectLine, type LineSeen } from './line.ts';
import { expectPoint } from './point.ts';

/** A row that the child wrote. */
interface RowSeen {
  readonly row: number;
  readonly line: Line;
  readonly digits: PlaceDigits;
  readonly notes: PlaceDigits;
  readonly standing: PlaceDigits;
}

/** What the child wrote, read once; then every belief is held against it. */
export function paperEvidence(work: DoneWork): (beliefs: Beliefs) => Expectation[] {
  const { problem } = work;
  const paper = paperSeen(work);
  const over = isOver(work);
  const rows = rowsSeen(work, paper);
  const standing = rows.map(standingRow);
  return (beliefs) => [
    ...expectRows(problem, beliefs, rows, over),
    ...(problem.multiplier.digits.length > 1
      ? expectSum(problem, beliefs, paper, standing, over)
      : []),
    ...expectPoint(work, beliefs),
  ];
}

function rowsSeen(work: DoneWork, paper: PaperSeen): RowSeen[] {
  const single = work.problem.multiplier.digits.length === 1;
  const lines: readonly (readonly [Line, number])[] = single
    ? [[paper.first('product').size > 0 ? 'product' : 'partial:0', 0]]
    : Object.entries(work.position.paper.begun).map(([line, row]) => [line as Line, row]);
  return lines.flatMap(([line, row]) => {
    const index = line === 'product' ? '0' : line.slice('partial:'.length);
    const notes = paper.first(`carry:${index}` as Line);
    const digits = paper.first(line);
    return digits.size === 0 ? [] : [{ row, line, digits, notes, standing: paper.standing(line) }];
  });
}

function standingRow({ row, standing, notes }: RowSeen): StandingRow {
  const places = Array.from({ length: topOf(standing) + 1 }, (_, at) => standing.get(at) ?? null);
  let shift = 0;
  while (shift < row && (places[shift] ?? 0) === 0) shift += 1;
  return { row, shift, places, notes: [...notes].map(([at, digit]) => ({ at, digit })) };
}

function expectRows(
  problem: Problem,
  beliefs: Beliefs,
  rows: readonly RowSeen[],
  over: boolean,
): Expectation[] {
  const found: Expectation[] = [];
  let earlier: readonly number[] = [];
  let first = 0;
  for (const [row] of problem.multiplier.digits.entries()) {
    const seen = rows.find((each) => each.row === row);
    const works = worksRow(beliefs, problem, row);
    const best =
      seen === undefined ? null : readingOf(problem, beliefs, seen, { earlier, first, over });
    const makesNothing =
      best?.made.digits.every((digit) => digit === 0) ?? nothingIn(problem, beliefs, row, earlier);
    const step = `row:${row}:${problem.mat.origin + row}`;
    if (seen === undefined || best === null) {
      if (over && !makesNothing) {
        found.push({ key: `works:${row}`, step, given: 0, expected: works ? 1 : 0, among: 2 });
      }
      continue;
    }
    if (makesNothing && works) found.push(...allZeros(best.expectations));
    else if (works)
      found.push(...best.expectations, {
        key: `works:${row}`,
        step,
        given: 1,
        expected: 1,
        among: 2,
      });
    else {
      found.push(...best.expectations.map((each) => ({ ...each, expected: null })));
      found.push({ key: `works:${row}`, step, given: 1, expected: 0, among: 2 });
    }
    earlier = best.made.handed;
    if (row === 0) first = topOf(seen.digits) + 1;
  }
  return found;
}

/** A row that makes nothing may be left out or filled with zeros. */
function allZeros(expectations: readonly Expectation[]): Expectation[] {
  return expectations.flatMap((each) =>
    each.given === null || each.key.startsWith('shift') ? [] : [{ ...each, expected: 0 }],
  );
}

function nothingIn(
  problem: Problem,
  beliefs: Beliefs,
  row: number,
  earlier: readonly number[],
): boolean {
  return rowWork(problem, beliefs, row, earlier).digits.every((digit) => digit === 0);
}

function rowWork(
  problem: Problem,
  beliefs: Beliefs,
  row: number,
  earlier: readonly number[],
  noted?: (at: number) => number | undefined,
): LineWork {
  const [across, up] = [problem.multiplicand.digits, problem.multiplier.digits];
  return workRow(beliefs, { across, up, row, earlier }, noted);
}

function readingOf(
  problem: Problem,
  beliefs: Beliefs,
  seen: RowSeen,
  at: { readonly earlier: readonly number[]; readonly first: number; readonly over: boolean },
): Aligned {
  const [across, up] = [problem.multiplicand.digits, problem.multiplier.digits];
  const { row } = seen;
  const line = lineSeen(problem, seen, at.over);
  const made = (shift: number) =>
    rowWork(problem, beliefs, row, at.earlier, (column) => seen.notes.get(column + shift));
  if (up.length === 1) return { made: made(0), expectations: expectLine(line, made(0), 0) };
  const due = (length: number) => shiftOf(beliefs, { row, across, up, length, first: at.first });
  return readAligned({ seen: line, row, origin: problem.mat.origin, due, made });
}

function lineSeen(problem: Problem, seen: RowSeen, over: boolean): LineSeen {
  const { row } = seen;
  return {
    digits: seen.digits,
    notes: seen.notes,
    over,
    name: `row:${row}`,
    stepAt: (at) => (at < row ? `zero:${row}:${at}` : `row:${row}:${problem.mat.origin + at}`),
  };
}

function expectSum(
  problem: Problem,
  beliefs: Beliefs,
  paper: PaperSeen,
  rows: readonly StandingRow[],
  over: boolean,
): Expectation[] {
  const notes = paper.first('carry:product');
  const made = productOf(beliefs, rows, problem.multiplier.digits.length, (at) => notes.get(at));
  const digits = paper.first('product');
  const stepAt = (at: number) => `sum:${problem.mat.origin + at}`;
  return expectLine({ digits, notes, over, name: 'sum', stepAt }, made, 0);
}
