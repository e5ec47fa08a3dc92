import type { Square } from '../mat/geometry.ts';
import { onMat } from '../mat/geometry.ts';
import type { Problem } from '../problem.ts';
import { type Beliefs, believed } from './beliefs.ts';
import type { Hand } from './hand.ts';
import { pairsOfRow } from './pairs.ts';
import { playPoint, writeLine } from './paper.ts';
import { playTiles } from './tiles.ts';
import { type AddendsAt, workSum } from './written.ts';

/** A digit on a square. */
export interface SquareFigure {
  readonly square: Square;
  readonly digit: number;
}

/** Facts in figures on the squares, the diagonals added, as the beliefs have it. */
export function playCells(problem: Problem, beliefs: Beliefs, hand: Hand): void {
  const tiles = playTiles(problem, beliefs, hand);
  const order = problem.multiplier.digits.map((_, row) => row);
  if (hand.habits.rows === 'topFirst') order.reverse();
  const figures = new Map<string, SquareFigure>();
  for (const row of order) {
    for (const { pair, square, fact } of pairsOfRow(problem.mat, beliefs, tiles, row)) {
      if (fact > 0) writeFact(problem, hand, figures, { pair, square, fact: hand.total(fact) });
    }
    hand.act({ do: 'finish', what: `row:${row}` });
  }
  const rows = problem.multiplier.digits.length;
  const made = workSum(beliefs, diagonalsOf(beliefs, [...figures.values()], rows));
  writeLine(problem, hand, made, { line: 'product', carries: 'carry:product', shift: 0 });
  playPoint(problem, beliefs, hand);
  hand.act({ do: 'finish', what: 'product' });
  hand.act({ do: 'finish', what: 'problem' });
}

interface FactWritten {
  readonly pair: Square;
  readonly square: Square;
  readonly fact: number;
}

/** The units on the square, the tens on the next to the left. */
function writeFact(
  { mat }: Problem,
  hand: Hand,
  figures: Map<string, SquareFigure>,
  { pair, square: [row, column], fact }: FactWritten,
): void {
  const put = (square: Square, slot: 'own' | 'fromRight', digit: number) => {
    if (!onMat(mat, square)) return;
    hand.act({ do: 'write', square, slot, digit, of: pair });
    figures.set(`${square.join(':')}:${slot}`, { square, digit });
  };
  put([row, column], 'own', fact % 10);
  if (fact >= 10) put([row, column + 1], 'fromRight', Math.floor(fact / 10) % 10);
}

/** The digits that stand on the squares, gathered as the beliefs have it. */
export function diagonalsOf(
  beliefs: Beliefs,
  figures: readonly SquareFigure[],
  rows: number,
): AddendsAt[] {
  const columns: number[][] = [];
  for (const { square, digit } of figures) {
    const at = believed(beliefs, 'gather', { square, rows }, square[0] + square[1]);
    columns[at] ??= [];
    columns[at].push(digit);
  }
  return Array.from(columns, (digits): AddendsAt => ({ digits: digits ?? [], notes: [] }));
}
