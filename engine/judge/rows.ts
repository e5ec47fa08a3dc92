import { amountAt, ownDue } from './ledger.ts';
import type { Debt, Ledger, Plan, Scene } from './scene.ts';

/** Values are in units of 10^origin. */
export function trueRow(plan: Plan, row: number): bigint {
  return plan.trueRows[row] ?? 0n;
}

/** What a row's own pairs make with its own layings, and with its wrong counts and exchanges where asked. */
function rowWith({ plan, ledger }: Scene, row: number, counts: (debt: Debt) => boolean): bigint {
  const beads = rowBeads(plan, ledger, row);
  let value = isTruth(plan, row, beads) ? trueRow(plan, row) : amountOf(beads);
  for (const debt of ledger.debts) {
    if (debt.row === row && counts(debt)) value += debt.amount;
  }
  return value;
}

/** Beads laid by place from the origin. Bars count for the row where they lie, whatever pair they were laid for. */
function rowBeads(plan: Plan, { plots }: Ledger, row: number): number[] {
  const beads = new Array<number>(plan.rows + plan.columns).fill(0);
  for (let index = 0; index < plots.length; index += 1) {
    const { lays } = plots[index]!;
    for (let lay = 0; lay < lays.length; lay += 1) {
      const { square, kind, count } = lays[lay]!;
      if (square[0] === row) beads[square[0] + square[1]]! += kind * count;
    }
  }
  return beads;
}

/** Most rows are laid truly: then nothing has to be added up. */
function isTruth({ across, up, columns }: Plan, row: number, beads: readonly number[]): boolean {
  for (let place = 0; place < beads.length; place += 1) {
    const column = place - row;
    const due = column < 0 || column >= columns ? 0 : (across[column] ?? 0) * (up[row] ?? 0);
    if (beads[place] !== due) return false;
  }
  return true;
}

function amountOf(beads: readonly number[]): bigint {
  let value = 0n;
  for (let place = beads.length - 1; place >= 0; place -= 1)
    value = value * 10n + BigInt(beads[place]!);
  return value;
}

/** Whether nothing can be read from the row but what it makes in the true problem. */
export function makesTruth({ plan, ledger }: Scene, row: number): boolean {
  if (ledger.debts.length > 0 || ledger.halves.some(({ byRow }) => (byRow[row] ?? 0) !== 0))
    return false;
  return isTruth(plan, row, rowBeads(plan, ledger, row));
}

/** Whether the row's own work comes to what the true problem makes. */
export function isTrueRow(scene: Scene, row: number): boolean {
  const { plan, ledger } = scene;
  if (ledger.debts.length === 0 && isLaidAsDue(plan, ledger, row)) return true;
  return ownRow(scene, row) === trueRow(plan, row);
}

function isLaidAsDue({ across, up, columns }: Plan, { plots }: Ledger, row: number): boolean {
  for (let column = 0; column < columns; column += 1) {
    if (plots[row * columns + column]!.laid !== (across[column] ?? 0) * up[row]!) return false;
  }
  return true;
}

export function ownRow(scene: Scene, row: number): bigint {
  return rowWith(scene, row, (debt) => debt.by !== 'slide' && debt.early);
}

/**
 * What may be said of a row: what it made before anything of it slid or anything came down on it. Where a
 * later slip of the same row shows on the mat, the value with it is right too: the child reads what lies there.
 */
export function sayable(scene: Scene, row: number): readonly bigint[] {
  const before = ownRow(scene, row);
  const half = halfMade(scene, row);
  if (half === 0n && !scene.ledger.debts.some((debt) => debt.row === row)) return [before];
  const counted = rowWith(scene, row, (debt) => debt.by !== 'slide');
  const slid = rowWith(scene, row, () => true);
  return [before, counted, slid, before - half, counted - half, slid - half];
}

/** Ten-bars of the row that are taken and not yet laid as ones, less ones laid before their tens were taken. */
function halfMade({ ledger }: Scene, row: number): bigint {
  let sum = 0n;
  for (const { byRow, place } of ledger.halves) sum += amountAt(byRow[row] ?? 0, place + 1);
  return sum;
}

/** Whether every pair of the row that the child's tiles make due has something laid. */
export function rowLaid(scene: Scene, row: number): boolean {
  const { plan, position, ledger } = scene;
  if (position.tiles.right[row] === null) return false;
  for (let column = 0; column < plan.columns; column += 1) {
    const index = row * plan.columns + column;
    if (ledger.plots[index]!.laid !== 0) continue;
    if ((ownDue(position, plan.squares[index]!) ?? 0) > 0) return false;
  }
  return true;
}
