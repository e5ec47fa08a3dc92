import type { Mat } from './geometry.ts';
import { emptyPosition, type Lying, type Position } from './position.ts';
import { EMPTY_SHEET, paperOf, type Sheet } from './sheet.ts';

/** A position as the judge works with it. Never changed: each action makes another that shares what it left alone. */
export type Desk = Lying<Sheet>;

export function emptyDesk({ rows, columns }: Mat): Desk {
  const { tiles, piles, said, finished } = emptyPosition(rows, columns);
  return { tiles, piles, paper: EMPTY_SHEET, said, finished };
}

/** The position that others see. */
export function shownOf(mat: Mat, { tiles, piles, paper, said, finished }: Desk): Position {
  return { tiles, piles, paper: paperOf(mat, paper), said, finished };
}
