import type { Desk } from '../mat/desk.ts';
import type { Square } from '../mat/geometry.ts';
import type { Skill } from '../vocabulary.ts';
import type {
  Debt,
  Finding,
  Grade,
  Half,
  Heap,
  Ledger,
  Moment,
  Plan,
  Plot,
  Scene,
} from './scene.ts';

/** The list with the item at the place, filled up with nothing below it; how long it is says nothing. */
export function placed<T>(
  list: readonly (T | undefined)[],
  at: number,
  item: T | undefined,
): (T | undefined)[] {
  const copy = at < list.length ? list.slice() : widened(list, at);
  copy[at] = item;
  return copy;
}

/** As many rows, places, slots of facts as a mat may have: a list that is pushed to takes more room than it needs. */
const WIDTHS = [6, 20, 30].map((width) => Array.from({ length: width }, () => undefined));

function widened<T>(list: readonly (T | undefined)[], at: number): (T | undefined)[] {
  const blank = WIDTHS.find(({ length }) => at < length);
  const copy: (T | undefined)[] = blank === undefined ? [] : blank.slice();
  for (let index = 0; index < list.length; index += 1) copy[index] = list[index];
  while (copy.length < at) copy.push(undefined);
  return copy;
}

const EMPTY_PLOT: Plot = {
  lays: [],
  laid: 0,
  right: null,
  counted: 'no',
  rightLays: undefined,
};
/** Another laying for the pair; how it was counted stays. */
export function plotWith(
  { counted, rightLays }: Plot,
  lays: Plot['lays'],
  laid: number,
  right: number | null,
): Plot {
  return { lays, laid, right, counted, rightLays };
}

export const EMPTY_HEAP: Heap = { pairs: [], rows: 0 };

export function emptyLedger(plan: Plan): Ledger {
  const squares = plan.rows * plan.columns;
  return {
    plots: new Array<Plot>(squares).fill(EMPTY_PLOT),
    heaps: new Array<Heap>(squares).fill(EMPTY_HEAP),
    debts: [],
    halves: [],
    disturbed: 0,
    readings: { read: [], said: [], saidThen: [], answered: [], seen: [] },
    onPaper: { lines: [], sumLine: [], pens: [], sumPens: [], squares: [] },
  };
}

/** The same work with something else lying there. */
export function sceneWith(scene: Scene, position: Desk, ledger = scene.ledger): Scene {
  const { plan, claims, charged, lastAct, memo } = scene;
  return { plan, position, ledger, claims, charged, lastAct, memo };
}

export function at(plan: Plan, square: Square): number {
  return square[0] * plan.columns + square[1];
}

export function squareAt(plan: Plan, index: number): Square {
  return plan.squares[index]!;
}

/** One more at the end; a list that is spread into another, or pushed to, takes far more room than it needs. */
export function added<T>(list: readonly T[], item: T): T[] {
  const copy = new Array<T>(list.length + 1);
  for (let index = 0; index < list.length; index += 1) copy[index] = list[index]!;
  copy[list.length] = item;
  return copy;
}

export function replaced<T>(list: readonly T[], index: number, item: T): T[] {
  const copy = list.slice();
  copy[index] = item;
  return copy;
}

/** What the child's own two tiles make at a pair's square; null unless both lie there. */
export function ownDue(position: Desk, square: Square): number | null {
  const across = position.tiles.bottom[square[1]];
  const up = position.tiles.right[square[0]];
  if (across === null || across === undefined || up === null || up === undefined) return null;
  return across * up;
}

/** What the true problem makes there; 0 outside it. */
export function trueDue(plan: Plan, square: Square): number {
  return (plan.across[square[1]] ?? 0) * (plan.up[square[0]] ?? 0);
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

/** The pair's own step to lay; outside the problem the nearest of its row, else of the nearest row. */
export function laidStep(plan: Plan, square: Square): number {
  const nearRow = Math.min(square[0], plan.up.length - 1);
  const nearColumn = Math.min(square[1], plan.across.length - 1);
  return plan.tables.laid[nearRow * plan.columns + nearColumn] ?? -1;
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

export function halfAt({ halves }: Ledger, place: number): Half | undefined {
  for (let index = 0; index < halves.length; index += 1) {
    if (halves[index]!.place === place) return halves[index];
  }
  return undefined;
}

export function finding(
  grade: Grade,
  follows: boolean,
  given: Finding['given'] = null,
  due: Finding['due'] = null,
): Finding {
  if (given === null && due === null) return (follows ? FOLLOWING : BARE)[grade];
  return { grade, follows, given, due };
}

/** Written out like `finding`: findings are looked at all the time, so there are few ways in which they are laid out. */
export function findingWith(
  { grade, follows, given, due, stale = false }: Finding,
  blames?: readonly number[],
  row?: number,
  skill?: Skill,
): Finding {
  return { grade, follows, given, due, stale, blames, row, skill };
}

export function staleFinding(
  follows: boolean,
  given: Finding['given'],
  due: Finding['due'],
  stale = true,
): Finding {
  return { grade: 'right', follows, given, due, stale };
}

/** Findings that tell no numbers are the same for every step. */
const BARE = bareFindings(false);
const FOLLOWING = bareFindings(true);

function bareFindings(follows: boolean): Readonly<Record<Grade, Finding>> {
  const bare = (grade: Grade): Finding => ({ grade, follows, given: null, due: null });
  return { right: bare('right'), wrong: bare('wrong'), short: bare('short'), none: bare('none') };
}

export const NOTHING_YET: Finding = finding('none', false);

/** Most digits are right: one finding for all that are the same. */
export const RIGHT_DIGITS: readonly Finding[] = Array.from({ length: 10 }, (_, digit) =>
  finding('right', false, digit, digit),
);

export const NOW: Moment = { at: 'now' };
export const AT_THE_PRODUCT: Moment = { at: 'product' };

/** At the finish of product or problem nothing more is to come. */
export function isOver(moment: Moment): boolean {
  return moment.at === 'product' || moment.at === 'problem';
}
