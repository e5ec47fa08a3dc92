import type { Problem } from '../../problem.ts';
import { type Beliefs, RIGHT_WAY } from '../../pupils/beliefs.ts';
import { productOf, type StandingRow } from '../../pupils/paper.ts';
import type { DoneWork } from '../done.ts';
import { type Strand, sighting, type Topic } from './evidence.ts';
import { isOver, type PaperSeen, type PlaceDigits, paperSeen, topOf } from './first-written.ts';
import { expectLine, type LineSeen, lineKey, lineSeen } from './line.ts';
import { type RowSeen, rowRead, rowStrands, rowsSeen } from './paper-rows.ts';
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
}

const SUM: Topic<SumSeen> = {
  bears: ['add', 'join'],
  expect(problem, { seen, rows }, beliefs) {
    const standing = rows.map((row) => standingRow(problem, row, beliefs));
    const noted = (at: number) => seen.notes.get(at);
    const made = productOf(beliefs, standing, problem.multiplier.digits.length, noted);
    return expectLine(seen, made, 0, (at) => `sum:${problem.mat.origin + at}`);
  },
};

/** Where the rows begin matters only to those who join them. */
function standingRow(
  problem: Problem,
  { seen, places }: RowStanding,
  beliefs: Beliefs,
): StandingRow {
  const { shift } = rowRead(problem, seen, beliefs.join === undefined ? RIGHT_WAY : beliefs);
  const notes = [...seen.seen.notes].map(([at, digit]) => ({ at, digit }));
  return { row: seen.row, shift, places, notes };
}

function sumSeen(work: DoneWork, paper: PaperSeen, rows: readonly RowSeen[]) {
  const seen = lineSeen(paper.first('product'), paper.first('carry:product'), isOver(work));
  const standing = rows.map((row) => ({ seen: row, places: placesOf(paper.standing(row.line)) }));
  const stands = standing.map(({ places }) => places.join()).join('/');
  const key = `${rows.at(-1)?.key}|${stands}|${lineKey(seen)}`;
  return sighting(SUM, key, { seen, rows: standing });
}

function placesOf(standing: PlaceDigits): (number | null)[] {
  return Array.from({ length: topOf(standing) + 1 }, (_, at) => standing.get(at) ?? null);
}
