import type { Square } from '../mat/geometry.ts';
import type { Position } from '../mat/position.ts';
import type {
  Debt,
  Finding,
  Grade,
  Heap,
  Ledger,
  Moment,
  Plan,
  Plot,
  Scene,
  SquarePens,
} from './scene.ts';

const EMPTY_PLOT: Plot = { lays: [], laid: 0, right: null, counted: 'no' };
export const EMPTY_HEAP: Heap = { pairs: [], rows: 0 };

const NO_SQUARE_PENS: SquarePens = { columns: [], acts: { own: [], fromRight: [] } };

export function emptyLedger(plan: Plan): Ledger {
  const squares = plan.rows * plan.columns;
  return {
    plots: Array.from({ length: squares }, () => EMPTY_PLOT),
    heaps: Array.from({ length: squares }, () => EMPTY_HEAP),
    debts: [],
    halves: {},
    disturbed: 0,
    latched: {},
    lines: [],
    pens: {},
    squarePens: Array.from({ length: plan.rows }, () => NO_SQUARE_PENS),
    factDigits: [],
  };
}

/** The same work with something else lying there. */
export function sceneWith(scene: Scene, position: Position, ledger = scene.ledger): Scene {
  const { plan, claims, charged, lastAct, memo } = scene;
  return { plan, position, ledger, claims, charged, lastAct, memo };
}

export function at(plan: Plan, [row, column]: Square): number {
  return row * plan.columns + column;
}

export function squareAt(plan: Plan, index: number): Square {
  return [Math.floor(index / plan.columns), index % plan.columns];
}

export function replaced<T>(list: readonly T[], index: number, item: T): T[] {
  const copy = list.slice();
  copy[index] = item;
  return copy;
}

/** What the child's own two tiles make at a pair's square; null unless both lie there. */
export function ownDue(position: Position, [row, column]: Square): number | null {
  const across = position.tiles.bottom[column];
  const up = position.tiles.right[row];
  if (across === null || across === undefined || up === null || up === undefined) return null;
  return across * up;
}

/** What the true problem makes there; 0 outside it. */
export function trueDue(plan: Plan, [row, column]: Square): number {
  return (plan.across[column] ?? 0) * (plan.up[row] ?? 0);
}

export function stepOf(plan: Plan, id: string): number {
  return plan.indexOf.get(id) ?? -1;
}

/** The step `settled` of a place counted from the origin; beyond the product, the nearest there is. */
export function settledStep(plan: Plan, index: number): number {
  const nearest = Math.min(index, plan.product.length - 1);
  return plan.tables.settled[nearest] ?? -1;
}

/** A row of the heap that has a step of its own to slide, the lowest; −1: none. */
export function slidStep(plan: Plan, rows: number): number {
  for (let row = 0; row < plan.rows; row += 1) {
    if ((rows & (1 << row)) === 0) continue;
    const step = plan.tables.slid[row];
    if (step !== undefined) return step;
  }
  return -1;
}

/** The only row in the mask, or −1. */
export function onlyRow(rows: number): number {
  return rows > 0 && (rows & (rows - 1)) === 0 ? 31 - Math.clz32(rows) : -1;
}

const POWERS = Array.from({ length: 20 }, (_, place) => 10n ** BigInt(place));

function tenTo(place: number): bigint {
  return POWERS[place] ?? 10n ** BigInt(place);
}

export function amountAt(beads: number, place: number): bigint {
  return BigInt(beads) * tenTo(place);
}

const NO_DEBTS: readonly Debt[] = [];

export function debtsOf(scene: Scene, step: number): readonly Debt[] {
  if (scene.ledger.debts.length === 0) return NO_DEBTS;
  return scene.ledger.debts.filter((debt) => debt.step === step);
}

export function finding(
  grade: Grade,
  follows: boolean,
  given: Finding['given'] = null,
  due: Finding['due'] = null,
): Finding {
  return { grade, follows, given, due };
}

export const NOTHING_YET: Finding = finding('none', false);

/** At the finish of product or problem nothing more is to come. */
export function isOver(moment: Moment): boolean {
  return moment.at === 'product' || moment.at === 'problem';
}
