import type { Square } from '../../mat/geometry.ts';
import type { SquareDigit } from '../../mat/position.ts';
import type { Slot } from '../../vocabulary.ts';
import type { Scene } from '../scene.ts';
import { squarePenOf } from './pens.ts';

/** Where the two digits of a fact stand: units on its own square, tens on the square to the left. */
export type Part = 'units' | 'tens';
export const PARTS: readonly Part[] = ['units', 'tens'];

/** `swapped`: the child uses the two slots the other way round, for a whole row. */
export function slotOf(part: Part, swapped: boolean): Slot {
  return (part === 'units') === swapped ? 'fromRight' : 'own';
}

export function squareOf([row, column]: Square, part: Part): Square {
  return part === 'units' ? [row, column] : [row, column + 1];
}

/** A digit on a square, and the pair and part that the slot is for. */
export interface Entry extends SquareDigit {
  readonly square: Square;
  readonly slot: Slot;
  readonly act: number;
  readonly pair: Square;
  readonly part: Part;
}

/** All that is written on the squares, row by row. */
export function entriesByRow(scene: Scene, swapped: boolean): Entry[][] {
  const { plan, position, ledger } = scene;
  const rows: Entry[][] = Array.from({ length: plan.rows }, () => []);
  for (const [key, content] of Object.entries(position.paper.squares)) {
    const [row, column] = key.split(':').map(Number) as [number, number];
    const square: Square = [row, column];
    for (const part of PARTS) {
      const slot = slotOf(part, swapped);
      const written = content[slot];
      if (written === undefined) continue;
      const pair: Square = part === 'units' ? square : [row, column - 1];
      const act = ledger.pens[squarePenOf(square, slot)] ?? -1;
      rows[row]!.push({ ...written, square, slot, act, pair, part });
    }
  }
  return rows;
}
