import type { Problem } from '../../problem.ts';
import type { Beliefs } from '../../pupils/beliefs.ts';
import { addendsOf, productOf, type StandingRow } from '../../pupils/paper.ts';
import { type AddendsAt, workSum } from '../../pupils/written.ts';
import type { DoneWork } from '../done.ts';
import { type Sighting, type Strand, sighting, type Topic } from './evidence.ts';
import { type FirstDone, firstDone, firstOn, isOver, standingOn } from './first-done.ts';
import { expectLine, type LineSeen, lineSeen, spellLine, spellPlaces } from './line.ts';
import { type RowSeen, rowRead, rowStrands, rowsKey, rowsSeen } from './paper-rows.ts';
import { pointSeen } from './point.ts';

/** What the child wrote: the rows, the sum, the point. */
export function paperSightings(work: DoneWork): readonly Strand[] {
  const first = firstDone(work);
  const rows = rowsSeen(work, first);
  const single = work.problem.multiplier.digits.length === 1;
  return [
    ...rowStrands(work, rows),
    ...(single ? [] : [[sumSeen(work, first, rows)]]),
    pointSeen(work),
  ];
}

/** A row, and what stands there in the end. */
interface RowStanding {
  readonly seen: RowSeen;
  readonly places: readonly (number | null)[];
}

/** The rows as they stand in the end, and the line in which they were added. */
interface SumSeen {
  readonly seen: LineSeen;
  readonly rows: readonly RowStanding[];
  /** The columns that are added, the same for all who add; null: not asked for yet. */
  columns: readonly AddendsAt[] | null;
}

const SUM: Topic<SumSeen> = {
  bears: ['add', 'join'],
  expect(problem, sum, beliefs) {
    const { seen } = sum;
    const noted = (at: number) => seen.notes.digits[at];
    const made =
      beliefs.join === undefined
        ? workSum(beliefs, columnsOf(problem, sum), noted)
        : productOf(beliefs, standingRows(problem, sum, beliefs), rowsIn(problem), noted);
    return expectLine(seen, made, 0, (at) => `sum:${problem.mat.origin + at}`);
  },
};

/** Where the rows begin matters only to those who join them. */
function columnsOf(problem: Problem, sum: SumSeen): readonly AddendsAt[] {
  sum.columns ??= addendsOf(
    sum.rows.map((row) => standingRow(row, 0)),
    rowsIn(problem),
  );
  return sum.columns;
}

function rowsIn({ multiplier }: Problem): number {
  return multiplier.digits.length;
}

function standingRows(
  problem: Problem,
  { rows }: SumSeen,
  beliefs: Beliefs,
): readonly StandingRow[] {
  return rows.map((row) => standingRow(row, rowRead(problem, row.seen, beliefs).shift));
}

function standingRow({ seen, places }: RowStanding, shift: number): StandingRow {
  const { digits, places: noted } = seen.seen.notes;
  const notes = noted.map((at) => ({ at, digit: digits[at]! }));
  return { row: seen.row, shift, places, notes };
}

function sumSeen(work: DoneWork, first: FirstDone, rows: readonly RowSeen[]): Sighting {
  const { digits } = firstOn(first, 'product');
  const seen = lineSeen(digits, firstOn(first, 'carry:product'), isOver(work));
  const standing = rows.map((row) => ({ seen: row, places: standingOn(work, row.line) }));
  const last = rows.at(-1);
  const key = [rows.length].concat(last === undefined ? [] : rowsKey(last));
  for (const { places } of standing) spellPlaces(key, places);
  spellLine(key, seen);
  return sighting(SUM, key, { seen, rows: standing, columns: null });
}
