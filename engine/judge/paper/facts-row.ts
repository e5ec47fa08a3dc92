import type { Square } from '../../mat/geometry.ts';
import type { Entry, SquareLine } from '../../mat/sheet.ts';
import { trueDue } from '../ledger.ts';
import type { Plan } from '../scene.ts';
import { type Ends, type Fact, PARTS, type Part, type RowRead, type RowWay } from './squares.ts';

export const NOT_ENDED: Ends = { row: false, all: false };
export const ROW_ENDED: Ends = { row: true, all: false };
export const ALL_ENDED: Ends = { row: true, all: true };

const NOTHING_COVERED: readonly Part[] = [];
const UNITS_COVERED: readonly Part[] = ['units'];
const TENS_COVERED: readonly Part[] = ['tens'];

export function digitDue(due: number, part: Part): number {
  return part === 'units' ? due % 10 : Math.floor(due / 10);
}

export function writtenValue({ units, tens }: Pick<Fact, Part>): number {
  return numberOf(tens, units);
}

function numberOf(tens: Entry | undefined, units: Entry | undefined): number {
  return 10 * (tens?.digit ?? 0) + (units?.digit ?? 0);
}

/** Nothing written is right only for a zero. */
export function isRight(fact: Fact, part: Part): boolean {
  const entry = part === 'units' ? fact.units : fact.tens;
  return (entry?.digit ?? 0) === digitDue(fact.due ?? 0, part);
}

export function valueAt(way: RowWay, column: number): number {
  return numberOf(entryAt(way, column, 'tens'), entryAt(way, column, 'units'));
}

/** Units where the tens belong and the other way round. */
export function isTurned({ due, units, tens }: Fact): boolean {
  return due !== null && isTurnedFor(due, units, tens);
}

function isTurnedFor(due: number, units: Entry | undefined, tens: Entry | undefined): boolean {
  return due !== 0 && due % 11 !== 0 && numberOf(units, tens) === due;
}

/** The facts of a row read one way. */
export function factsOf(plan: Plan, way: RowWay): readonly Fact[] {
  const first = firstColumn(way);
  const facts = new Array<Fact>(endColumn(plan, way) - first);
  for (let index = 0; index < facts.length; index += 1)
    facts[index] = factAt(plan, way, first + index);
  return facts;
}

/** Whether anything stands in its slots, for whatever pair. */
export function isHeld(way: RowWay, column: number): boolean {
  return digitAt(way, column, 'units') !== undefined || digitAt(way, column, 'tens') !== undefined;
}

export function factAt(plan: Plan, way: RowWay, column: number): Fact {
  const units = entryAt(way, column, 'units');
  const tens = entryAt(way, column, 'tens');
  const due = dueAt(plan, way, column);
  return { pair: pairAt(way.row, column), due, units, tens, covered: coveredAt(way, column) };
}

function coveredAt(way: RowWay, column: number): readonly Part[] {
  const tens = isCoveredAt(way, column, 'tens');
  if (isCoveredAt(way, column, 'units')) return tens ? PARTS : UNITS_COVERED;
  return tens ? TENS_COVERED : NOTHING_COVERED;
}

/** Nothing comes from the right of the last column, unless it says so. */
export function firstColumn(way: RowWay): number {
  return entryAt(way, -1, 'tens') === undefined ? 0 : -1;
}

/** Columns as far as the numbers, the tiles, and the digits that belong there reach. */
export function endColumn(plan: Plan, way: RowWay): number {
  const { bottom } = way.tiles;
  let end = plan.across.length;
  for (let column = end; column < bottom.length; column += 1) {
    if (bottom[column] !== null || isWrittenAt(way, column)) end = column + 1;
  }
  return end;
}

function isWrittenAt(way: RowWay, column: number): boolean {
  return entryAt(way, column, 'units') !== undefined || entryAt(way, column, 'tens') !== undefined;
}

/**
 * Without both tiles nothing is due; at the end what is right for the true problem is let stand. Beyond the two
 * numbers no tile is to come: there the finish of the row is the end.
 */
export function dueAt(plan: Plan, way: RowWay, column: number): number | null {
  if (column < 0) return 0;
  const { row, tiles, ends } = way;
  const across = tiles.bottom[column];
  const up = tiles.right[row];
  if (typeof across === 'number' && typeof up === 'number') return across * up;
  const outside = row >= plan.up.length || column >= plan.across.length;
  if (!(ends.all || (outside && ends.row))) return null;
  const value = valueAt(way, column);
  return value === trueDue(plan, pairAt(row, column)) ? value : 0;
}

/** The digit in the slot of a pair, if it does not say that it belongs to another. */
export function entryAt(way: RowWay, column: number, part: Part): Entry | undefined {
  const entry = digitAt(way, column, part);
  return entry === undefined || isLost(entry, way.row, column) ? undefined : entry;
}

function digitAt({ line, swapped }: RowWay, column: number, part: Part): Entry | undefined {
  const at = part === 'units' ? column : column + 1;
  const content = line === undefined || at < 0 ? undefined : line[at];
  return (part === 'units') === swapped ? content?.fromRight : content?.own;
}

function isLost({ of }: Entry, row: number, column: number): boolean {
  return of !== undefined && (of[0] !== row || of[1] !== column);
}

/** One column to the right of the mat and one to its left as well. */
const PAIRS = Array.from({ length: 6 }, (_, row) =>
  Array.from({ length: 16 }, (__, index): Square => [row, index - 1]),
);

/** One and the same for all who ask. */
export function pairAt(row: number, column: number): Square {
  return PAIRS[row]![column + 1]!;
}

/** In place of a slot of a row. */
export const NOWHERE = -1;

/** The only slot in which something else stands: twice its column, and one more where it is that from the right. */
export function slotChanged(before: RowWay['line'], now: RowWay['line']): number {
  let only = NOWHERE;
  if (before === undefined || now === undefined) return only;
  for (let column = 0; column < now.length; column += 1) {
    if (now[column] === before[column]) continue;
    const own = now[column]?.own !== before[column]?.own;
    const fromRight = now[column]?.fromRight !== before[column]?.fromRight;
    if (only !== NOWHERE || own === fromRight) return NOWHERE;
    only = 2 * column + (own ? 0 : 1);
  }
  return only;
}

/** What such a slot is for, */
function partIn(swapped: boolean, slot: number): Part {
  return (slot % 2 === 0) === swapped ? 'tens' : 'units';
}

/** and the column of the fact to which it belongs. */
export function columnIn(swapped: boolean, slot: number): number {
  const column = slot >> 1;
  return partIn(swapped, slot) === 'units' ? column : column - 1;
}

export function readWay(
  plan: Plan,
  row: number,
  line: SquareLine | undefined,
  tiles: RowWay['tiles'],
  ends: Ends,
  swapped: boolean,
): RowRead {
  const read = { row, line, tiles, ends, swapped, lost: 0, amiss: 0 };
  for (let column = 0; line !== undefined && column < line.length; column += 1)
    read.lost += lostAt(read, column, 'units') + lostAt(read, column - 1, 'tens');
  // A digit that names another pair than its slot's speaks for the other way more than a wrong one.
  read.amiss = 2 * read.lost;
  for (let column = -1; column < tiles.bottom.length; column += 1)
    read.amiss += amissAt(plan, read, column);
  return read;
}

/** The same way with something else in this slot alone, where the rest reads as it did. */
export function readBeside(
  plan: Plan,
  before: RowRead,
  line: SquareLine | undefined,
  slot: number,
): RowRead {
  const { row, tiles, ends, swapped } = before;
  const column = columnIn(swapped, slot);
  const part = partIn(swapped, slot);
  const read = { row, line, tiles, ends, swapped, lost: before.lost, amiss: before.amiss };
  read.lost += lostAt(read, column, part) - lostAt(before, column, part);
  // What is lost may stand for what lacks elsewhere in a row that has ended.
  if (ends.row && read.lost + before.lost > 0)
    return readWay(plan, row, line, tiles, ends, swapped);
  read.amiss += 2 * (read.lost - before.lost);
  read.amiss += amissAt(plan, read, column) - amissAt(plan, before, column);
  return read;
}

function lostAt(way: RowWay, column: number, part: Part): number {
  return isCoveredAt(way, column, part) ? 1 : 0;
}

/** Whether a digit stands there that belongs to another pair. */
function isCoveredAt(way: RowWay, column: number, part: Part): boolean {
  const digit = digitAt(way, column, part);
  return digit !== undefined && isLost(digit, way.row, column);
}

/** The digits that name another pair than that of their slot, by square. */
export function lostOf(way: RowRead): readonly Entry[] {
  const { lost, line } = way;
  const all: Entry[] = [];
  const width = lost === 0 || line === undefined ? -1 : line.length;
  for (let column = 0; column <= width; column += 1) {
    if (isCoveredAt(way, column, 'units')) all.push(digitAt(way, column, 'units')!);
    if (isCoveredAt(way, column - 1, 'tens')) all.push(digitAt(way, column - 1, 'tens')!);
  }
  return all;
}

/** A digit that would come from beyond the last column speaks for the other way more than a wrong one. */
function amissAt(plan: Plan, read: RowRead, column: number): number {
  const units = entryAt(read, column, 'units');
  const tens = entryAt(read, column, 'tens');
  const written = (units === undefined ? 0 : 1) + (tens === undefined ? 0 : 1);
  if (column < 0) return 2 * written;
  if (written === 0 && !read.ends.row) return 0;
  const due = dueAt(plan, read, column);
  if (due === null) return written;
  if (numberOf(tens, units) === due) return 0;
  if (isTurnedFor(due, units, tens)) return 1;
  const ones = isAmiss(read, column, 'units', units, due) ? 1 : 0;
  return isAmiss(read, column, 'tens', tens, due) ? ones + 1 : ones;
}

function isAmiss(
  read: RowRead,
  column: number,
  part: Part,
  entry: Entry | undefined,
  due: number,
): boolean {
  const digit = digitDue(due, part);
  if (entry !== undefined) return entry.digit !== digit;
  return digit !== 0 && read.ends.row && !isExcused(read, column, part, digit);
}

/** Written over by what is counted already, or standing elsewhere with its name. */
function isExcused(read: RowRead, column: number, part: Part, due: number): boolean {
  if (isCoveredAt(read, column, part)) return true;
  return read.lost > 0 && isNamed(lostOf(read), read.row, column, due);
}

function isNamed(lost: readonly Entry[], row: number, column: number, digit: number): boolean {
  return lost.some((entry) => !isLost(entry, row, column) && entry.digit === digit);
}
