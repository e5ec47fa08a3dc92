import { pileValue } from '../../mat/position.ts';
import { digitsOf } from '../../numerals/numeral.ts';
import { amountAt } from '../ledger.ts';
import { rowLaid, sayable } from '../rows.ts';
import type { Scene } from '../scene.ts';
import { type Columns, copiedColumns } from './columns.ts';
import type { RowSource } from './rows-written.ts';

/** Partial products that are read from the mat, where there are several rows. */
export const recorded: RowSource = {
  applies: ({ up }) => up.length > 1,
  columns: (scene, row) => {
    const values = [...sayable(scene, row), ...lying(scene, row)].filter((value) => value >= 0n);
    const above = 10n ** BigInt(row);
    const digits = [...new Set(values)].map((value) => digitsOf(value / above));
    return [...digits.map(copiedColumns), ...unsettled(scene, row)];
  },
  ready: (scene, row) => rowLaid(scene, row) && !halfMade(scene, row),
};

function halfMade({ ledger }: Scene, row: number): boolean {
  return Object.values(ledger.halves).some(({ from }) => from[0] === row);
}

function isDisturbed({ ledger }: Scene, row: number): boolean {
  return (ledger.disturbed & (1 << row)) !== 0;
}

function pilesOf({ position }: Scene, row: number): number[] {
  return position.piles[row]!.map(pileValue);
}

/** As long as nothing of the row slid and nothing came down on it, the child reads what lies there. */
function lying(scene: Scene, row: number): readonly bigint[] {
  if (isDisturbed(scene, row)) return [];
  const piles = pilesOf(scene, row);
  return [piles.reduce((sum, pile, column) => sum + amountAt(pile, row + column), 0n)];
}

/** Of a place that still holds ten or more its units digit is right as well: `settled` pays. */
function unsettled(scene: Scene, row: number): readonly Columns[] {
  const piles = pilesOf(scene, row);
  if (isDisturbed(scene, row) || piles.every((pile) => pile < 10)) return [];
  return [copiedColumns(piles.map((pile) => pile % 10))];
}
