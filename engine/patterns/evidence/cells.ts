import type { ActionOf } from '../../mat/action.ts';
import { MAT_LIMITS, type Square } from '../../mat/geometry.ts';
import { squareKey } from '../../mat/sheet.ts';
import { diagonalsAdded, type SquareFigure } from '../../pupils/cells.ts';
import { pairsOfRow } from '../../pupils/pairs.ts';
import { digitsOn, type Tiles } from '../../pupils/tiles.ts';
import { SLOTS } from '../../vocabulary.ts';
import type { DoneWork } from '../done.ts';
import {
  type Expectation,
  factsWith,
  isSameSquare,
  ROOM,
  type Strand,
  sighting,
  type Topic,
} from './evidence.ts';
import { isOver, type PaperSeen, paperSeen } from './first-written.ts';
import { expectLine, type LineSeen, lineKey, lineSeen } from './line.ts';
import { pointSeen } from './point.ts';
import { tilesSeen } from './tiles.ts';

/** Tiles, facts on the squares, the sum of the diagonals, the point. */
export function cellsSeen(work: DoneWork): readonly Strand[] {
  const sum = sumSeen(work, paperSeen(work));
  return [tilesSeen(work), factsSeen(work), [sum], pointSeen(work)];
}

/** The digits that stand on the squares in the end, and the line in which they were added. */
interface SumSeen {
  readonly seen: LineSeen;
  readonly figures: readonly SquareFigure[];
}

const SUM: Topic<SumSeen> = {
  bears: ['gather', 'add'],
  expect({ mat, multiplier }, { seen, figures }, beliefs) {
    const rows = multiplier.digits.length;
    const made = diagonalsAdded(beliefs, figures, rows, (at) => seen.notes.get(at));
    return expectLine(seen, made, 0, (at) => `sum:${mat.origin + at}`);
  },
};

function sumSeen(work: DoneWork, paper: PaperSeen) {
  const figures = figuresStanding(work);
  const seen = lineSeen(paper.first('product'), paper.first('carry:product'), isOver(work));
  let key = `${lineKey(seen)}|`;
  for (const { square, digit } of figures) key += `${square[0]}:${square[1]}:${digit} `;
  return sighting(SUM, key, { seen, figures });
}

/** Names of squares as paper has them, by [row][column]. */
const NAMES = Array.from({ length: MAT_LIMITS.rows.most }, (_, row) =>
  Array.from({ length: MAT_LIMITS.columns.most }, (_, column) => squareKey([row, column])),
);

/** Square by square, in whatever order they were written. */
function figuresStanding({ problem, position }: DoneWork): SquareFigure[] {
  const { squares } = position.paper;
  const figures: SquareFigure[] = [];
  for (let row = 0; row < problem.mat.rows; row += 1)
    for (let column = 0; column < problem.mat.columns; column += 1) {
      const there = squares[NAMES[row]![column]!];
      if (there === undefined) continue;
      const square: Square = [row, column];
      for (const slot of SLOTS) {
        const written = there[slot];
        if (written !== undefined) figures.push({ square, digit: written.digit });
      }
    }
  return figures;
}

/** A fact as it was first written on the squares. */
interface FactSeen {
  readonly value: number;
  /** Columns left of the pair's own square. */
  readonly aside: number;
}

/** The facts of a row by the column of their pair, by the tiles that lie there. */
interface FactsOfRow {
  readonly row: number;
  readonly facts: readonly (FactSeen | undefined)[];
  readonly tiles: Tiles;
  /** Whether all of it should be there. */
  readonly done: boolean;
}

const AMONG = { fact: 40, place: 6 } as const;
/** Keys of the squares come after those of the values. */
const WHERE = 30;

const FACTS: Topic<FactsOfRow> = {
  bears: ['fact', 'partner', 'works', 'aside'],
  facts(_problem, { row, tiles }) {
    return factsWith(tiles.right[row] ?? 0, digitsOn(tiles.bottom));
  },
  expect({ mat, multiplicand }, { row, facts, tiles, done }, beliefs) {
    const found: Expectation[] = [];
    const due = pairsOfRow(mat, beliefs, tiles, row);
    for (let column = 0; column < mat.columns; column += 1) {
      const seen = facts[column];
      const meant = due.find(({ pair }) => pair[1] === column);
      // A zero may be written or left out.
      const expected = meant?.fact || null;
      if (seen === undefined && (!done || expected === null)) continue;
      const at = Math.min(column, multiplicand.digits.length - 1);
      found.push({
        key: column,
        step: `fact:${row}:${at}`,
        given: seen?.value || null,
        expected,
        among: AMONG.fact,
      });
      if (seen === undefined || meant === undefined || expected === null) continue;
      found.push({
        key: WHERE + column,
        step: `where:${row}:${at}`,
        given: seen.aside,
        expected: meant.square[1] - column,
        among: AMONG.place,
      });
    }
    return found;
  },
};

function factsSeen(work: DoneWork): Strand {
  const { tiles, finished } = work.position;
  const over = isOver(work);
  const written = writtenByPair(work);
  return work.problem.multiplier.digits.map((_, row) => {
    const done = over || finished.rows.includes(row);
    const facts = (written[row] ?? []).map(factOf);
    let key = `${row}${done}${tiles.bottom}|${tiles.right}|`;
    for (const fact of facts) key += fact === undefined ? ' ' : `${fact.value}@${fact.aside} `;
    return sighting(FACTS, key, { row, facts, tiles, done }, row * ROOM);
  });
}

type Written = Extract<ActionOf<'write'>, { square: Square }>;

/** Told by the page whose fact a digit is of; else by its slot. */
function pairOf({ square: [row, column], slot, of }: Written): Square {
  return of ?? [row, slot === 'own' ? column : column - 1];
}

/** What was first written for each pair, by [row][column]: on each square once. */
function writtenByPair({ problem, log }: DoneWork): Written[][][] {
  const { rows, columns } = problem.mat;
  const written: Written[][][] = Array.from({ length: rows }, () =>
    Array.from({ length: columns }, () => []),
  );
  for (const { action, refused } of log) {
    if (refused !== undefined || action.do !== 'write' || !('square' in action)) continue;
    const [row, column] = pairOf(action);
    const own = written[row]?.[column];
    if (own === undefined || own.some(({ square }) => isSameSquare(square, action.square)))
      continue;
    own.push(action);
  }
  return written;
}

/** Of two digits the one further right is the units; a single one says it by its slot. */
function factOf(own: readonly Written[], pairColumn: number): FactSeen | undefined {
  if (own.length === 0) return undefined;
  const [first, second] = [...own].sort((one, other) => one.square[1] - other.square[1]);
  const alone = second === undefined && first!.slot === 'fromRight';
  const value = alone ? 10 * first!.digit : first!.digit + 10 * (second?.digit ?? 0);
  return { value, aside: first!.square[1] - (alone ? 1 : 0) - pairColumn };
}
