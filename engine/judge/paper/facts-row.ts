import type { Desk } from '../../mat/desk.ts';
import { isSameSquare, type Square } from '../../mat/geometry.ts';
import { trueDue } from '../ledger.ts';
import type { Plan } from '../scene.ts';
import type { Entry, Part, SquareRow } from './squares.ts';

/** One fact on the squares: what its own tiles make due and what stands in its two slots. */
export interface Fact {
  readonly pair: Square;
  /** null: a tile is missing, so nothing is owed or forbidden yet. */
  readonly due: number | null;
  readonly units: Entry | undefined;
  readonly tens: Entry | undefined;
  /** Slots where a digit stands now that names another pair. */
  readonly covered: readonly Part[];
  readonly final: boolean;
}

/** One row of squares read one way. */
export interface RowRead {
  readonly found: readonly Fact[];
  /** Digits that say of themselves that they belong to another pair. */
  readonly lost: readonly Entry[];
  readonly amiss: number;
}

/** Whether nothing more comes in this row, or anywhere. */
export interface Ends {
  readonly row: boolean;
  readonly all: boolean;
}

const NOTHING_COVERED: readonly Part[] = [];
const NOTHING_LOST: readonly Entry[] = [];

export function digitDue(due: number, part: Part): number {
  return part === 'units' ? due % 10 : Math.floor(due / 10);
}

export function writtenValue({ units, tens }: Pick<Fact, Part>): number {
  return 10 * (tens?.digit ?? 0) + (units?.digit ?? 0);
}

/** Nothing written is right only for a zero. */
export function isRight(fact: Fact, part: Part): boolean {
  const entry = part === 'units' ? fact.units : fact.tens;
  const due = digitDue(fact.due ?? 0, part);
  return entry === undefined ? due === 0 : entry.digit === due;
}

/** Units where the tens belong and the other way round. */
export function isTurned(fact: Fact): boolean {
  const { due } = fact;
  return due !== null && due !== 0 && due % 11 !== 0 && turnedValue(fact) === due;
}

function turnedValue({ units, tens }: Fact): number {
  return 10 * (units?.digit ?? 0) + (tens?.digit ?? 0);
}

/**
 * Without both tiles nothing is due; at the end what is right for the true problem is let stand. Beyond the two
 * numbers no tile is to come: there the finish of the row is the end.
 */
function dueOf(plan: Plan, { tiles }: Desk, pair: Square, value: number, ends: Ends) {
  const across = tiles.bottom[pair[1]];
  const up = tiles.right[pair[0]];
  if (typeof across === 'number' && typeof up === 'number') return across * up;
  const outside = pair[0] >= plan.up.length || pair[1] >= plan.across.length;
  if (!(ends.all || (outside && ends.row))) return null;
  return value === trueDue(plan, pair) ? value : 0;
}

/** What stands in the slots of a row, by the column of the pair that each slot is for. */
interface Slots {
  readonly units: (Entry | undefined)[];
  readonly tens: (Entry | undefined)[];
  readonly covered: (readonly Part[] | undefined)[];
  readonly lost: Entry[];
  /** Nothing comes from the right of the last column. */
  readonly outside: Fact[];
}

/** `swapped`: the slots are used the other way round. */
export function readWay(
  plan: Plan,
  desk: Desk,
  line: SquareRow,
  row: number,
  ends: Ends,
  swapped: boolean,
): RowRead {
  const slots: Slots = { units: [], tens: [], covered: [], lost: [], outside: [] };
  const units = swapped ? line.fromRight : line.own;
  const tens = swapped ? line.own : line.fromRight;
  for (let index = 0; index < line.columns.length; index += 1) {
    const column = line.columns[index]!;
    const here = units[column];
    if (here !== undefined) put(slots, here, row, column, 'units', ends.row);
    const carried = tens[column];
    if (carried !== undefined) put(slots, carried, row, column - 1, 'tens', ends.row);
  }
  const found = slots.outside;
  const lost = slots.lost.length === 0 ? NOTHING_LOST : slots.lost;
  const width = Math.max(
    plan.across.length,
    tilesWide(desk),
    slots.units.length,
    slots.tens.length,
  );
  for (let column = 0; column < width; column += 1) {
    const pair = pairAt(row, column);
    const own = { units: slots.units[column], tens: slots.tens[column] };
    found.push({
      pair,
      due: dueOf(plan, desk, pair, writtenValue(own), ends),
      units: own.units,
      tens: own.tens,
      covered: slots.covered[column] ?? NOTHING_COVERED,
      final: ends.row,
    });
  }
  // A digit that names another pair than its slot's speaks for the other way more than a wrong one.
  return { found, lost, amiss: 2 * lost.length + amissIn(found, lost) };
}

/**
 * The same way after something was written or rubbed out: only the facts whose digits are others are read again, for
 * as long as each digit speaks for the pair of its slot; null: the row has to be read as a whole.
 */
export function readOn(
  plan: Plan,
  desk: Desk,
  line: SquareRow,
  { found, lost, amiss }: RowRead,
  ends: Ends,
  swapped: boolean,
): RowRead | null {
  const units = swapped ? line.fromRight : line.own;
  const tens = swapped ? line.own : line.fromRight;
  const width = found.length;
  if (lost.length > 0 || tens[0] !== undefined || found[0]?.pair[1] !== 0) return null;
  for (let beyond = width; beyond < units.length; beyond += 1)
    if (units[beyond] !== undefined) return null;
  for (let beyond = width + 1; beyond < tens.length; beyond += 1)
    if (tens[beyond] !== undefined) return null;
  let facts: Fact[] | null = null;
  let wrong = amiss;
  for (let column = 0; column < width; column += 1) {
    const before = found[column]!;
    const here = units[column];
    const carried = tens[column + 1];
    if (here === before.units && carried === before.tens) continue;
    const { pair, covered, final } = before;
    if (isLost(here, pair) || isLost(carried, pair)) return null;
    const own = { units: here, tens: carried };
    const due = dueOf(plan, desk, pair, writtenValue(own), ends);
    const fact: Fact = { pair, due, units: here, tens: carried, covered, final };
    facts ??= found.slice();
    facts[column] = fact;
    wrong += amissOf(fact, NOTHING_LOST) - amissOf(before, NOTHING_LOST);
  }
  return { found: facts ?? found, lost, amiss: wrong };
}

function isLost(entry: Entry | undefined, pair: Square): boolean {
  const of = entry?.of;
  return of !== undefined && (of[0] !== pair[0] || of[1] !== pair[1]);
}

/** The digit in the slot of a pair; −1: of none. */
function put(
  slots: Slots,
  entry: Entry,
  row: number,
  column: number,
  part: Part,
  final: boolean,
): void {
  const { of } = entry;
  if (of !== undefined && (of[0] !== row || of[1] !== column)) {
    slots.lost.push(entry);
    if (column >= 0) {
      const before = slots.covered[column] ?? NOTHING_COVERED;
      while (slots.covered.length < column) slots.covered.push(undefined);
      slots.covered[column] = [...before, part];
    }
    return;
  }
  if (column < 0) {
    const units = part === 'units' ? entry : undefined;
    const tens = part === 'tens' ? entry : undefined;
    const pair: Square = [row, column];
    slots.outside.push({ pair, due: 0, units, tens, covered: NOTHING_COVERED, final });
    return;
  }
  const there = slots[part];
  while (there.length < column) there.push(undefined);
  there[column] = entry;
}

/** Columns as far as the child's tiles reach. */
function tilesWide({ tiles }: Desk): number {
  let wide = tiles.bottom.length;
  while (wide > 0 && tiles.bottom[wide - 1] === null) wide -= 1;
  return wide;
}

const PAIRS = Array.from({ length: 6 }, (_, row) =>
  Array.from({ length: 14 }, (__, column): Square => [row, column]),
);

/** One and the same for all who ask. */
function pairAt(row: number, column: number): Square {
  return PAIRS[row]![column]!;
}

/** Written over by what is counted already, or standing elsewhere with its name. */
function isExcused(fact: Fact, part: Part, lost: readonly Entry[]): boolean {
  if (fact.covered.includes(part)) return true;
  if (lost.length === 0 || fact[part] !== undefined) return false;
  const { pair, due } = fact;
  return lost.some(
    ({ of, digit }) => isSameSquare(of!, pair) && digit === digitDue(due ?? 0, part),
  );
}

function amissIn(facts: readonly Fact[], lost: readonly Entry[]): number {
  let amiss = 0;
  for (let index = 0; index < facts.length; index += 1) amiss += amissOf(facts[index]!, lost);
  return amiss;
}

/** A digit that would come from beyond the last column speaks for the other way more than a wrong one. */
function amissOf(fact: Fact, lost: readonly Entry[]): number {
  const written = (fact.units === undefined ? 0 : 1) + (fact.tens === undefined ? 0 : 1);
  if (fact.pair[1] < 0) return 2 * written;
  if (fact.due === null) return written;
  if (written === 0 && !fact.final) return 0;
  if (isTurned(fact)) return 1;
  return (isAmiss(fact, 'units', lost) ? 1 : 0) + (isAmiss(fact, 'tens', lost) ? 1 : 0);
}

function isAmiss(fact: Fact, part: Part, lost: readonly Entry[]): boolean {
  if (isRight(fact, part) || isExcused(fact, part, lost)) return false;
  return fact.final || fact[part] !== undefined;
}
