import { MAT_LIMITS } from '../../mat/geometry.ts';
import { pileValue } from '../../mat/position.ts';
import { lastStroke } from '../../mat/sheet.ts';
import { digitsOf } from '../../numerals/numeral.ts';
import { withDebts, withReadings } from '../changes.ts';
import { amountAt, ownDue, placed, sceneWith } from '../ledger.ts';
import { kept, recalled, remembered, slots } from '../memo.ts';
import { makesTruth, rowLaid, sayable } from '../rows.ts';
import type { Scene } from '../scene.ts';
import { type Columns, copiedColumns } from './columns.ts';
import { NO_LINE, rowLines } from './lines.ts';
import type { RowSource } from './rows-written.ts';

/** Partial products that are read from the mat, where there are several rows. */
export const recorded: RowSource = {
  applies: ({ up }) => up.length > 1,
  columns: (scene, row) => readFrom(scene, row),
  ready: (scene, row) => rowLaid(scene, row) && !halfMade(scene, row),
  see: (scene, row) => {
    const { ledger } = scene;
    if (ledger.debts.length === 0) return ledger;
    return withReadings(ledger, { seen: placed(ledger.readings.seen, row, liesIn(scene, row)) });
  },
};

const COLUMNS = slots(MAT_LIMITS.rows.most);

function readFrom(scene: Scene, row: number): readonly Columns[] {
  const { memo, position, ledger } = scene;
  const { debts } = ledger;
  // Without debts it does not matter when it was written.
  const late = debts.length > 0;
  const { tiles } = position;
  const { plots, halves } = ledger;
  const piles = late ? position.piles : null;
  const pen = late ? lastPen(scene, row) : null;
  const seen = late ? ledger.readings.seen[row] : null;
  const slot = COLUMNS + row;
  return (
    recalled(memo, slot, tiles, piles, plots, debts, halves, pen, seen) ??
    kept(memo, slot, columnsOf(scene, row), tiles, piles, plots, debts, halves, pen, seen)
  );
}

/** By row: what it truly makes, the same whenever it is read. */
const TRULY = slots(MAT_LIMITS.rows.most);

function columnsOf(scene: Scene, row: number): readonly Columns[] {
  const { plan } = scene;
  if (makesTruth(scene, row) && !makesNothing(scene, row))
    return remembered(plan.memo, TRULY + row, () => [copiedColumns(plan.partials[row]!)], plan);
  const then = until(scene, lastPen(scene, row));
  const values = [...sayable(then, row), ...lying(then, row)].filter((value) => value >= 0n);
  const above = 10n ** BigInt(row);
  const digits = [...new Set(values)].map((value) => digitsOf(value / above));
  // From a row from which more was lifted than it has nothing can be read: it may stay empty.
  const nothing = digits.length === 0 || makesNothing(scene, row);
  return [...digits.map(copiedColumns), ...(nothing ? [copiedColumns([])] : [])];
}

function halfMade({ ledger }: Scene, row: number): boolean {
  return ledger.halves.some(({ from }) => from[0] === row);
}

/** By its tiles: such a row may stay empty, whatever was laid there by mistake. */
function makesNothing({ position }: Scene, row: number): boolean {
  return position.piles[row]!.every((_, column) => (ownDue(position, [row, column]) ?? 0) === 0);
}

/** After a slip with its bars the child reads what lies in the row, or what lay there when it was written. */
function lying(scene: Scene, row: number): readonly bigint[] {
  const { debts, readings } = scene.ledger;
  // A debt of no one row lies between two of them.
  if (!debts.some((debt) => debt.row === row || debt.row < 0 || debt.square[0] === row)) return [];
  const lay = readings.seen[row];
  return [lay === undefined || !isWritten(scene, row) ? liesIn(scene, row) : lay];
}

function liesIn({ position }: Scene, row: number): bigint {
  const piles = position.piles[row]!.map(pileValue);
  return piles.reduce((sum, pile, column) => sum + amountAt(pile, row + column), 0n);
}

function isWritten(scene: Scene, row: number): boolean {
  return Number.isFinite(lastPen(scene, row));
}

/** The action that wrote the latest digit of the row; without one, whatever is done last. */
function lastPen(scene: Scene, row: number): number {
  const { position } = scene;
  const { line } = rowLines(scene)[row]!;
  const written = line === NO_LINE ? undefined : position.paper.lines[line];
  if (written === undefined) return Number.POSITIVE_INFINITY;
  let stroke = lastStroke(position.paper, line);
  while (stroke !== undefined && (stroke.line !== line || written[stroke.at] === undefined))
    stroke = stroke.before;
  return stroke?.act ?? -1;
}

/** What is written is read from the mat as it is then: a slip with bars that comes later changes nothing about it. */
function until(scene: Scene, last: number): Scene {
  const debts = scene.ledger.debts.filter(({ act }) => act <= last);
  if (debts.length === scene.ledger.debts.length) return scene;
  return sceneWith(scene, scene.position, withDebts(scene.ledger, debts));
}
