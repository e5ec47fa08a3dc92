import type { Line } from '../../mat/action.ts';
import type { Problem } from '../../problem.ts';
import { type Beliefs, RIGHT_WAY } from '../../pupils/beliefs.ts';
import { productOf, type StandingRow } from '../../pupils/paper.ts';
import { type AddendsAt, workSum } from '../../pupils/written.ts';
import type { DoneWork } from '../done.ts';
import { columnsMet } from './added.ts';
import { type Strand, sighting, type Topic } from './evidence.ts';
import { isOver, type PaperSeen, paperSeen, standingOn } from './first-written.ts';
import { expectLine, type LineSeen, lineSeen, spellLine, spellPlaces } from './line.ts';
import { type RowSeen, rowRead, rowStrands, rowsKey, rowsSeen } from './paper-rows.ts';
import { pointSeen } from './point.ts';

/** What the child wrote: the rows, the sum, the point. */
export function paperSightings(work: DoneWork): readonly Strand[] {
  const paper = paperSeen(work);
  const rows = rowsSeen(work, paper);
  const single = work.problem.multiplier.digits.length === 1;
  return [
    ...rowStrands(work, rows),
    ...(single ? [] : [[sumSeen(work, paper, rows)]]),
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
    const noted = (at: number) => seen.notes.get(at);
    const made =
      beliefs.join === undefined
        ? workSum(beliefs, columnsOf(problem, sum), noted)
        : productOf(beliefs, standingRows(problem, sum, beliefs), rowsIn(problem), noted);
    return expectLine(seen, made, 0, (at) => `sum:${problem.mat.origin + at}`);
  },
};

function columnsOf(problem: Problem, sum: SumSeen): readonly AddendsAt[] {
  sum.columns ??= columnsMet((beliefs) => {
    productOf(beliefs, standingRows(problem, sum, RIGHT_WAY), rowsIn(problem));
  });
  return sum.columns;
}

function rowsIn({ multiplier }: Problem): number {
  return multiplier.digits.length;
}

/** Where the rows begin matters only to those who join them. */
function standingRows(
  problem: Problem,
  { rows }: SumSeen,
  beliefs: Beliefs,
): readonly StandingRow[] {
  return rows.map((row) => standingRow(problem, row, beliefs));
}

function standingRow(
  problem: Problem,
  { seen, places }: RowStanding,
  beliefs: Beliefs,
): StandingRow {
  const { shift } = rowRead(problem, seen, beliefs);
  const notes = [...seen.seen.notes].map(([at, digit]) => ({ at, digit }));
  return { row: seen.row, shift, places, notes };
}

function sumSeen(work: DoneWork, paper: PaperSeen, rows: readonly RowSeen[]) {
  const seen = lineSeen(paper.first('product'), paper.notes('carry:product'), isOver(work));
  const standing = rows.map((row) => ({ seen: row, places: placesOf(work, row.line) }));
  const last = rows.at(-1);
  const key = [rows.length].concat(last === undefined ? [] : rowsKey(last));
  for (const { places } of standing) spellPlaces(key, places);
  spellLine(key, seen);
  return sighting(SUM, key, { seen, rows: standing, columns: null });
}

function placesOf(work: DoneWork, line: Line): (number | null)[] {
  return Array.from(standingOn(work, line), (digit) => digit ?? null);
}
