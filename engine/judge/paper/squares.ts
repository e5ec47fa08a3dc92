import type { Square } from '../../mat/geometry.ts';
import { squareKey } from '../../mat/paper.ts';
import type { SquareDigit } from '../../mat/position.ts';
import type { Slot } from '../../vocabulary.ts';
import type { Scene } from '../scene.ts';

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

/** All that is written on the squares of a row. */
export function entriesOf(scene: Scene, row: number, swapped: boolean): Entry[] {
  const { position, ledger } = scene;
  const { columns, acts } = ledger.squarePens[row]!;
  const entries: Entry[] = [];
  for (const column of columns) {
    const square: Square = [row, column];
    const content = position.paper.squares[squareKey(square)] ?? {};
    for (const part of PARTS) {
      const slot = slotOf(part, swapped);
      const written = content[slot];
      if (written === undefined) continue;
      const pair: Square = part === 'units' ? square : [row, column - 1];
      const act = acts[slot][column] ?? -1;
      const { digit, of } = written;
      entries.push(
        of === undefined
          ? { digit, square, slot, act, pair, part }
          : { digit, of, square, slot, act, pair, part },
      );
    }
  }
  return entries;
}
