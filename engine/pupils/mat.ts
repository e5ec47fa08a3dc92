import type { Action } from '../mat/action.ts';
import { apply } from '../mat/apply.ts';
import { onMat, type Square } from '../mat/geometry.ts';
import { emptyPosition, type Position, pileValue } from '../mat/position.ts';
import type { Problem } from '../problem.ts';
import { type Beliefs, believed, type SlideAt } from './beliefs.ts';
import type { Hand } from './hand.ts';
import { digitsOfAmount } from './written.ts';

/** The pupil's own mat: what lies on it decides what is done next. */
export interface OwnMat {
  readonly problem: Problem;
  readonly beliefs: Beliefs;
  readonly hand: Hand;
  position: Position;
}

export function ownMat(problem: Problem, beliefs: Beliefs, hand: Hand): OwnMat {
  const position = emptyPosition(problem.mat.rows, problem.mat.columns);
  return { problem, beliefs, hand, position };
}

/** Done if real material can do it; else the pupil leaves it. */
export function doOn(mat: OwnMat, action: Action): void {
  const after = apply(mat.problem, mat.position, action);
  if (typeof after === 'string') return;
  mat.position = after;
  mat.hand.act(action);
}

export function barsAt({ position }: OwnMat, [row, column]: Square): readonly number[] {
  return position.piles[row]![column]!.bars;
}

/** Counts and exchanges a row from right to left. `afterSliding`: single bars need no counting then. */
export function settleRow(mat: OwnMat, row: number, afterSliding: boolean): void {
  for (let column = 0; column < mat.problem.mat.columns; column += 1) {
    const square: Square = [row, column];
    const bars = barsAt(mat, square);
    const single = bars.slice(0, 9).reduce((sum, count) => sum + count, 0);
    if (single > (afterSliding ? 1 : 0)) {
      const total = believed(mat.beliefs, 'count', { bars }, pileValue({ bars }));
      doOn(mat, { do: 'count', square, total: mat.hand.total(total) });
    }
    exchangeAt(mat, square, afterSliding);
  }
}

function exchangeAt(mat: OwnMat, from: Square, afterSliding: boolean): void {
  const tens = barsAt(mat, from)[9]!;
  if (tens === 0) return;
  const made = exchangeMeant(mat.problem, mat.beliefs, { from, tens, afterSliding });
  if (made === null) return;
  const ones = mat.hand.digit(made.ones);
  doOn(mat, { do: 'exchange', from, tens, to: [from[0], from[1] + made.left], ones });
}

/** What is laid for ten-bars; null: they stay, or there is no square for it. */
export function exchangeMeant(
  { mat }: Problem,
  beliefs: Beliefs,
  at: Parameters<NonNullable<Beliefs['exchange']>>[0],
): { readonly ones: number; readonly left: number } | null {
  const made = believed(beliefs, 'exchange', at, { ones: at.tens, left: 1 });
  if (made === null || !onMat(mat, [at.from[0], at.from[1] + made.left])) return null;
  return made;
}

/** All rows come down, the lower ones first. */
export function slideAll(mat: OwnMat): void {
  const { rows, columns } = mat.problem.mat;
  for (let row = 1; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1) {
      const from: Square = [row, column];
      if (pileValue({ bars: barsAt(mat, from) }) === 0) continue;
      const beads = mat.position.piles.map((line) => line.map(pileValue));
      const at = slideAt(beads, from, row);
      const to = slideMeant(mat.problem, mat.beliefs, at);
      if (to === null) continue;
      const astray = mat.hand.slips() && to[1] > 0 ? to[1] - 1 : to[1];
      doOn(mat, { do: 'slide', from, to: [to[0], astray] });
    }
}

/** -1: nothing lies there. */
function leftmostOn(row: readonly number[]): number {
  let column = row.length - 1;
  while (column >= 0 && row[column]! <= 0) column -= 1;
  return column;
}

/** `beads`: by [row][column], as they lie before. */
export function slideAt(
  beads: readonly (readonly number[])[],
  from: Square,
  down: number,
): SlideAt {
  let top = beads.length - 1;
  while (top >= 0 && leftmostOn(beads[top]!) < 0) top -= 1;
  return { from, down, outermost: from[0] === top && from[1] === leftmostOn(beads[top]!) };
}

/** Where a pile comes down; null: it stays, or there is no square. */
export function slideMeant({ mat }: Problem, beliefs: Beliefs, at: SlideAt): Square | null {
  const aside = believed(beliefs, 'slide', at, 0);
  if (aside === null) return null;
  const to: Square = [at.from[0] - at.down, at.from[1] + at.down + aside];
  return onMat(mat, to) ? to : null;
}

/** The digits read from squares, lowest first: of what still holds ten or more, the units. */
export function digitsRead(
  beliefs: Beliefs,
  piles: readonly number[],
  of: 'product' | number,
): readonly number[] {
  const right = of === 'product' ? trimmed(piles.map((beads) => beads % 10)) : rowAmount(piles);
  return believed(beliefs, 'read', { piles, of }, right);
}

function trimmed(digits: readonly number[]): readonly number[] {
  return digits.slice(0, Math.max(1, digits.findLastIndex((digit) => digit > 0) + 1));
}

/** A row is said or recorded as its value, whatever has not been exchanged yet. */
function rowAmount(piles: readonly number[]): readonly number[] {
  return digitsOfAmount(piles.reduce((sum, beads, column) => sum + beads * 10 ** column, 0));
}
