import { isSameSquare, type Mat, type Square } from '../../mat/geometry.ts';
import { squareKey } from '../../mat/sheet.ts';
import type { Numeral } from '../../numerals/numeral.ts';
import { type Beliefs, believed, RIGHT_WAY } from '../../pupils/beliefs.ts';
import { diagonalsOf, type SquareFigure } from '../../pupils/cells.ts';
import { pairsOfRow } from '../../pupils/pairs.ts';
import { digitsOn, type Tiles } from '../../pupils/tiles.ts';
import { type AddendsAt, workSum } from '../../pupils/written.ts';
import { SLOTS } from '../../vocabulary.ts';
import { BLANK } from '../by-list.ts';
import type { DoneWork } from '../done.ts';
import {
  type Expectation,
  factsWith,
  type Sighting,
  type Strand,
  sighting,
  type Topic,
} from './evidence.ts';
import { type FirstDone, firstDone, firstOn, isOver, type OnSquare } from './first-done.ts';
import { expectLine, type LineSeen, lineSeen, spellLine } from './line.ts';
import { pointSeen } from './point.ts';
import { spellTiles, tilesSeen } from './tiles.ts';

/** Tiles, facts on the squares, the sum of the diagonals, the point. */
export function cellsSeen(work: DoneWork): readonly Strand[] {
  const first = firstDone(work);
  return [tilesSeen(work, first), factsSeen(work, first), [sumSeen(work, first)], pointSeen(work)];
}

/** The digits that stand on the squares in the end, and the line in which they were added. */
interface SumSeen {
  readonly seen: LineSeen;
  readonly work: DoneWork;
  /** The diagonals, the same for all who add them; null: not asked for yet. */
  columns: readonly AddendsAt[] | null;
}

const SUM: Topic<SumSeen> = {
  bears: ['gather', 'add'],
  expect({ mat, multiplier }, sum, beliefs) {
    const { seen, work } = sum;
    const rows = multiplier.digits.length;
    const noted = (at: number) => seen.notes.digits[at];
    const columns =
      beliefs.gather === undefined
        ? columnsOf(sum, rows)
        : diagonalsOf(beliefs, figuresStanding(work), rows);
    const made = workSum(beliefs, columns, noted);
    return expectLine(seen, made, 0, (at) => `sum:${mat.origin + at}`);
  },
};

/** As all have them who gather along the diagonals. */
function columnsOf(sum: SumSeen, rows: number): readonly AddendsAt[] {
  sum.columns ??= diagonalsOf(RIGHT_WAY, figuresStanding(sum.work), rows);
  return sum.columns;
}

function sumSeen(work: DoneWork, first: FirstDone): Sighting {
  const { digits } = firstOn(first, 'product');
  const seen = lineSeen(digits, firstOn(first, 'carry:product'), isOver(work));
  const key: number[] = [];
  spellFigures(key, work);
  spellLine(key, seen);
  return sighting(SUM, key, { seen, work, columns: null });
}

/** Spells out the digits that stand on the squares: a number for each slot. */
function spellFigures(key: number[], { problem: { mat }, position }: DoneWork): void {
  const { squares } = position.paper;
  for (let row = 0; row < mat.rows; row += 1)
    for (let column = 0; column < mat.columns; column += 1) {
      const there = squares[squareKey(row, column)];
      for (const slot of SLOTS) key.push(there?.[slot]?.digit ?? BLANK);
    }
}

/** Square by square, in whatever order they were written. */
function figuresStanding({ problem, position }: DoneWork): SquareFigure[] {
  const { squares } = position.paper;
  const figures: SquareFigure[] = [];
  for (let row = 0; row < problem.mat.rows; row += 1)
    for (let column = 0; column < problem.mat.columns; column += 1) {
      const there = squares[squareKey(row, column)];
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
  /** The pairs as the right way has them; null: not asked for yet. */
  usual: readonly PairWorked[] | null;
  /** Names of its steps by column, as far as they were asked for. */
  readonly names: StepNames[];
}

interface StepNames {
  readonly fact: string;
  readonly where: string;
}

const AMONG = { fact: 40, place: 6 } as const;
/** Keys of the squares come after those of the values. */
const WHERE = 30;

const FACTS: Topic<FactsOfRow> = {
  bears: ['fact', 'partner', 'works', 'aside'],
  facts(_problem, { row, tiles }) {
    return factsWith(tiles.right[row] ?? 0, digitsOn(tiles.bottom));
  },
  expect({ mat, multiplicand }, ofRow, beliefs) {
    const { facts, done } = ofRow;
    const found: Expectation[] = [];
    const due = pairsDue(mat, ofRow, beliefs);
    for (let column = 0; column < mat.columns; column += 1) {
      const seen = facts[column];
      const meant = due.find(({ pair }) => pair[1] === column);
      // A zero may be written or left out.
      const expected = meant === undefined ? null : factOf(beliefs, meant) || null;
      if (seen === undefined && (!done || expected === null)) continue;
      const name = stepNames(ofRow, column, multiplicand);
      found.push({
        key: column,
        step: name.fact,
        given: seen?.value || null,
        expected,
        among: AMONG.fact,
      });
      if (seen === undefined || meant === undefined || expected === null) continue;
      found.push({
        key: WHERE + column,
        step: name.where,
        given: seen.aside,
        expected: meant.square[1] - column,
        among: AMONG.place,
      });
    }
    return found;
  },
};

function stepNames({ row, names }: FactsOfRow, column: number, { digits }: Numeral): StepNames {
  const at = Math.min(column, digits.length - 1);
  names[column] ??= { fact: `fact:${row}:${at}`, where: `where:${row}:${at}` };
  return names[column];
}

type PairWorked = ReturnType<typeof pairsOfRow>[number];

/** Of the pairs that are due, whose facts may be the right way's. */
function factOf(beliefs: Beliefs, { a, b }: PairWorked): number {
  return believed(beliefs, 'fact', { a, b }, a * b);
}

/** Most beliefs are about facts alone: they leave the pairs and their squares as they are. */
function pairsDue(mat: Mat, ofRow: FactsOfRow, beliefs: Beliefs): readonly PairWorked[] {
  const { tiles, row } = ofRow;
  const { partner, works, aside } = beliefs;
  if (partner || works || aside) return pairsOfRow(mat, beliefs, tiles, row);
  ofRow.usual ??= pairsOfRow(mat, RIGHT_WAY, tiles, row);
  return ofRow.usual;
}

function factsSeen(work: DoneWork, { squares }: FirstDone): Strand {
  const { tiles, finished } = work.position;
  const over = isOver(work);
  const written = factsWritten(work.problem.mat, squares);
  return work.problem.multiplier.digits.map((_, row) => {
    const done = over || finished.rows.includes(row);
    const facts = written[row] ?? [];
    const key = [row, done ? 1 : 0];
    for (const fact of facts) key.push(fact?.value ?? BLANK, fact?.aside ?? 0);
    spellTiles(key, tiles.bottom);
    spellTiles(key, tiles.right);
    return sighting(FACTS, key, { row, facts, tiles, done, usual: null, names: [] });
  });
}

/** The facts by [row][column of their pair], from what was first written for each pair on each square. */
function factsWritten({ rows, columns }: Mat, squares: FirstDone['squares']) {
  const written: OnSquare[][][] = Array.from({ length: rows }, () => []);
  for (const each of squares) {
    const [row, column] = pairOf(each);
    const ofRow = written[row];
    if (ofRow === undefined || column < 0 || column >= columns) continue;
    const own = ofRow[column];
    if (own === undefined) ofRow[column] = [each];
    else if (!own.some(({ square }) => isSameSquare(square, each.square))) own.push(each);
  }
  return written.map((ofRow) => {
    const facts: (FactSeen | undefined)[] = [];
    for (let column = 0; column < columns; column += 1)
      facts.push(factWritten(ofRow[column], column));
    return facts;
  });
}

/** Told by the page whose fact a digit is of; else by its slot. */
function pairOf({ square, slot, of }: OnSquare): Square {
  return of ?? [square[0], slot === 'own' ? square[1] : square[1] - 1];
}

function fromTheRight(own: readonly OnSquare[]): readonly OnSquare[] {
  const [first, second] = own;
  const isSo = second === undefined || (own.length === 2 && first!.square[1] <= second.square[1]);
  return isSo ? own : [...own].sort((one, other) => one.square[1] - other.square[1]);
}

/** Of two digits the one further right is the units; a single one says it by its slot. */
function factWritten(
  own: readonly OnSquare[] | undefined,
  pairColumn: number,
): FactSeen | undefined {
  if (own === undefined) return undefined;
  const [first, second] = fromTheRight(own);
  const alone = second === undefined && first!.slot === 'fromRight';
  const value = alone ? 10 * first!.digit : first!.digit + 10 * (second?.digit ?? 0);
  return { value, aside: first!.square[1] - (alone ? 1 : 0) - pairColumn };
}
