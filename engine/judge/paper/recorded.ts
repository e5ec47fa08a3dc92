import { pileValue } from '../../mat/position.ts';
import { digitsOf } from '../../numerals/numeral.ts';
import { amountAt, ownDue } from '../ledger.ts';
import { rowLaid, sayable } from '../rows.ts';
import type { Scene } from '../scene.ts';
import { copiedColumns } from './columns.ts';
import { rowLines } from './lines.ts';
import { penOf } from './pens.ts';
import type { RowSource } from './rows-written.ts';

/** Partial products that are read from the mat, where there are several rows. */
export const recorded: RowSource = {
  applies: ({ up }) => up.length > 1,
  columns: (scene, row) => {
    const last = lastPen(scene, row);
    const then = until(scene, last);
    const lies = last < scene.lastAct ? [] : lying(then, row);
    const values = [...sayable(then, row), ...lies].filter((value) => value >= 0n);
    const above = 10n ** BigInt(row);
    const digits = [...new Set(values)].map((value) => digitsOf(value / above));
    return [...digits.map(copiedColumns), ...(makesNothing(scene, row) ? [copiedColumns([])] : [])];
  },
  ready: (scene, row) => rowLaid(scene, row) && !halfMade(scene, row),
};

function halfMade({ ledger }: Scene, row: number): boolean {
  return Object.values(ledger.halves).some(({ from }) => from[0] === row);
}

/** By its tiles: such a row may stay empty, whatever was laid there by mistake. */
function makesNothing({ position }: Scene, row: number): boolean {
  return position.piles[row]!.every((_, column) => (ownDue(position, [row, column]) ?? 0) === 0);
}

/** After a slip with its bars the child reads what lies in the row. */
function lying(scene: Scene, row: number): readonly bigint[] {
  const { debts } = scene.ledger;
  // A debt of no one row lies between two of them.
  if (!debts.some((debt) => debt.row === row || debt.row < 0 || debt.square[0] === row)) return [];
  const piles = scene.position.piles[row]!.map(pileValue);
  return [piles.reduce((sum, pile, column) => sum + amountAt(pile, row + column), 0n)];
}

/** The action that wrote the latest digit of the row; without one, whatever is done last. */
function lastPen({ plan, position, ledger }: Scene, row: number): number {
  const { line } = rowLines(plan, position)[row]!;
  const places = line === null ? [] : Object.keys(position.paper.lines[line] ?? {});
  if (line === null || places.length === 0) return Number.POSITIVE_INFINITY;
  return Math.max(...places.map((place) => ledger.pens[penOf(line, Number(place))] ?? -1));
}

/** What is written is read from the mat as it is then: a slip with bars that comes later changes nothing about it. */
function until(scene: Scene, last: number): Scene {
  const debts = scene.ledger.debts.filter(({ act }) => act <= last);
  if (debts.length === scene.ledger.debts.length) return scene;
  return { ...scene, ledger: { ...scene.ledger, debts } };
}
