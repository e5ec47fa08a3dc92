import { pileValue } from '../../mat/position.ts';
import { digitsOf } from '../../numerals/numeral.ts';
import { amountAt, ownDue } from '../ledger.ts';
import { rowLaid, rowUntil, sayable } from '../rows.ts';
import type { Scene } from '../scene.ts';
import { copiedColumns } from './columns.ts';
import { rowLines } from './lines.ts';
import { penOf } from './pens.ts';
import type { RowSource } from './rows-written.ts';

/** Partial products that are read from the mat, where there are several rows. */
export const recorded: RowSource = {
  applies: ({ up }) => up.length > 1,
  columns: (scene, row) => {
    const values = [...sayable(scene, row), ...lying(scene, row), ...asWritten(scene, row)].filter(
      (value) => value >= 0n,
    );
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

/**
 * A row that still lacked bars is not judged before its finish. If none came since, what it was written from was
 * all there was: a slip with its bars that came later takes nothing back.
 */
function asWritten({ plan, position, ledger }: Scene, row: number): readonly bigint[] {
  if (ledger.debts.length === 0) return [];
  const { line } = rowLines(plan, position)[row]!;
  if (line === null) return [];
  const places = Object.keys(position.paper.lines[line] ?? {});
  const last = Math.max(...places.map((place) => ledger.pens[penOf(line, Number(place))] ?? -1));
  const laidLater = ledger.plots.some(({ lays }) =>
    lays.some(({ square, act }) => square[0] === row && act > last),
  );
  return laidLater ? [] : [rowUntil(plan, ledger, row, last)];
}
