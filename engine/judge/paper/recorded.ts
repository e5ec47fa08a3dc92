import { pileValue } from '../../mat/position.ts';
import { digitsOf } from '../../numerals/numeral.ts';
import { amountAt, ownDue, sceneWith } from '../ledger.ts';
import { remembered } from '../memo.ts';
import { rowLaid, sayable } from '../rows.ts';
import type { Scene } from '../scene.ts';
import { type Columns, copiedColumns } from './columns.ts';
import { rowLines } from './lines.ts';
import { pensOf } from './pens.ts';
import type { RowSource } from './rows-written.ts';

/** Partial products that are read from the mat, where there are several rows. */
export const recorded: RowSource = {
  applies: ({ up }) => up.length > 1,
  columns: (scene, row) =>
    remembered(scene.memo, COLUMNS[row]!, readFrom(scene, row), () => columnsOf(scene, row)),
  ready: (scene, row) => rowLaid(scene, row) && !halfMade(scene, row),
  see: (scene, row) => {
    const { ledger } = scene;
    if (ledger.debts.length === 0) return ledger;
    const seen = { given: `${liesIn(scene, row)}`, follows: false };
    return { ...ledger, latched: { ...ledger.latched, [seenKey(row)]: seen } };
  },
};

const COLUMNS = Array.from({ length: 6 }, (_, row) => `columns of row ${row}`);

/** All that decides what a row may read. */
function readFrom(scene: Scene, row: number): readonly unknown[] {
  const { position, ledger } = scene;
  const from: unknown[] = [
    position.tiles,
    position.piles,
    ledger.plots,
    ledger.debts,
    ledger.halves,
  ];
  // Without debts it does not matter when it was written.
  if (ledger.debts.length > 0) from.push(lastPen(scene, row), ledger.latched[seenKey(row)]);
  return from;
}

function columnsOf(scene: Scene, row: number): readonly Columns[] {
  const then = until(scene, lastPen(scene, row));
  const values = [...sayable(then, row), ...lying(then, row)].filter((value) => value >= 0n);
  const above = 10n ** BigInt(row);
  const digits = [...new Set(values)].map((value) => digitsOf(value / above));
  // From a row from which more was lifted than it has nothing can be read: it may stay empty.
  const nothing = digits.length === 0 || makesNothing(scene, row);
  return [...digits.map(copiedColumns), ...(nothing ? [copiedColumns([])] : [])];
}

function halfMade({ ledger }: Scene, row: number): boolean {
  return Object.values(ledger.halves).some(({ from }) => from[0] === row);
}

/** By its tiles: such a row may stay empty, whatever was laid there by mistake. */
function makesNothing({ position }: Scene, row: number): boolean {
  return position.piles[row]!.every((_, column) => (ownDue(position, [row, column]) ?? 0) === 0);
}

/** After a slip with its bars the child reads what lies in the row, or what lay there when it was written. */
function lying(scene: Scene, row: number): readonly bigint[] {
  const { debts, latched } = scene.ledger;
  // A debt of no one row lies between two of them.
  if (!debts.some((debt) => debt.row === row || debt.row < 0 || debt.square[0] === row)) return [];
  const seen = latched[seenKey(row)];
  return [seen === undefined || !isWritten(scene, row) ? liesIn(scene, row) : BigInt(seen.given)];
}

function liesIn({ position }: Scene, row: number): bigint {
  const piles = position.piles[row]!.map(pileValue);
  return piles.reduce((sum, pile, column) => sum + amountAt(pile, row + column), 0n);
}

function isWritten(scene: Scene, row: number): boolean {
  return Number.isFinite(lastPen(scene, row));
}

function seenKey(row: number): string {
  return `seen:${row}`;
}

/** The action that wrote the latest digit of the row; without one, whatever is done last. */
function lastPen(scene: Scene, row: number): number {
  const { plan, position, ledger } = scene;
  const { line } = rowLines(scene)[row]!;
  const places = line === null ? [] : Object.keys(position.paper.lines[line] ?? {});
  if (line === null || places.length === 0) return Number.POSITIVE_INFINITY;
  const { acts } = pensOf(ledger, line);
  const { origin } = plan.problem.mat;
  return Math.max(...places.map((place) => acts[Number(place) - origin] ?? -1));
}

/** What is written is read from the mat as it is then: a slip with bars that comes later changes nothing about it. */
function until(scene: Scene, last: number): Scene {
  const debts = scene.ledger.debts.filter(({ act }) => act <= last);
  if (debts.length === scene.ledger.debts.length) return scene;
  return sceneWith(scene, scene.position, { ...scene.ledger, debts });
}
