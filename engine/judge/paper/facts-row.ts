import type { Desk } from '../../mat/desk.ts';
import { isSameSquare, type Square } from '../../mat/geometry.ts';
import type { Slot } from '../../vocabulary.ts';
import { replaced, trueDue } from '../ledger.ts';
import type { Plan } from '../scene.ts';
import { type Entry, PARTS, type Part, type SquareRow } from './squares.ts';

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
  /** How much of it is amiss, as long as nothing of its row is lost. */
  readonly amiss: number;
}

/** One row of squares read one way. */
export interface RowRead {
  readonly ends: Ends;
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
export const NOT_ENDED: Ends = { row: false, all: false };
export const ROW_ENDED: Ends = { row: true, all: false };
export const ALL_ENDED: Ends = { row: true, all: true };

const NO_FACTS: readonly Fact[] = [];
const NOTHING_COVERED: readonly Part[] = [];
const UNITS_COVERED: readonly Part[] = ['units'];
const TENS_COVERED: readonly Part[] = ['tens'];
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

/**
 * `swapped`: the slots are used the other way round. `before`: how the row read this way last, with the same tiles;
 * the facts that have not changed since stay the same.
 */
export function readWay(
  plan: Plan,
  desk: Desk,
  line: SquareRow,
  row: number,
  ends: Ends,
  swapped: boolean,
  before: RowRead | undefined,
): RowRead {
  const units = swapped ? line.fromRight : line.own;
  const tens = swapped ? line.own : line.fromRight;
  const known = before?.found ?? NO_FACTS;
  // Nothing comes from the right of the last column.
  const first = tens[0] !== undefined && !isLost(tens[0], pairAt(row, -1)) ? -1 : 0;
  const width = widthOf(plan, desk, units, tens, row);
  const found: Fact[] = [];
  let same = known.length === width - first;
  let amiss = 0;
  let covered = false;
  for (let column = first; column < width; column += 1) {
    const here = column < 0 ? undefined : units[column];
    const was = known[column - first];
    const fact = factAt(plan, desk, pairAt(row, column), here, tens[column + 1], ends, was);
    found.push(fact);
    same &&= fact === was;
    amiss += fact.amiss;
    covered ||= fact.covered !== NOTHING_COVERED;
  }
  const facts = same ? known : found;
  const astray = (first === 0 && tens[0] !== undefined) || isBeyond(units, tens, width);
  const lost = covered || astray ? lostIn(desk, units, tens, row) : NOTHING_LOST;
  // A digit that names another pair than its slot's speaks for the other way more than a wrong one.
  if (lost.length > 0) amiss = 2 * lost.length + amissIn(facts, lost);
  return { ends, found: facts, lost, amiss };
}

/** What was written on a square, or rubbed out there: no entry. */
export interface Written {
  readonly column: number;
  readonly slot: Slot;
  readonly entry: Entry | undefined;
}

/** The same way with something else in one slot; null: the row has to be read as a whole. */
export function readWith(
  plan: Plan,
  desk: Desk,
  { ends, found, lost, amiss }: RowRead,
  { column, slot, entry }: Written,
  swapped: boolean,
): RowRead | null {
  const isUnits = (slot === 'own') !== swapped;
  const at = (isUnits ? column : column - 1) - (found[0]?.pair[1] ?? 0);
  const was = found[at];
  if (was === undefined || was.pair[1] < 0 || lost.length > 0) return null;
  if (entry !== undefined && isLost(entry, was.pair)) return null;
  const [units, tens] = isUnits ? [entry, was.tens] : [was.units, entry];
  const fact = factAt(plan, desk, was.pair, units, tens, ends, was);
  return { ends, found: replaced(found, at, fact), lost, amiss: amiss - was.amiss + fact.amiss };
}

/** Columns as far as the numbers, the tiles, and the digits that belong there reach. */
function widthOf(
  plan: Plan,
  desk: Desk,
  units: readonly (Entry | undefined)[],
  tens: readonly (Entry | undefined)[],
  row: number,
): number {
  let width = Math.max(plan.across.length, tilesWide(desk));
  for (let column = width; column < units.length; column += 1) {
    if (isFor(units[column], row, column) || isFor(tens[column + 1], row, column))
      width = column + 1;
  }
  return width;
}

/** Whether digits stand beyond the columns of the row: all of them are lost. */
function isBeyond(
  units: readonly (Entry | undefined)[],
  tens: readonly (Entry | undefined)[],
  width: number,
): boolean {
  for (let column = width; column < units.length; column += 1) {
    if (units[column] !== undefined || tens[column + 1] !== undefined) return true;
  }
  return false;
}

function isFor(entry: Entry | undefined, row: number, column: number): boolean {
  return entry !== undefined && !isLost(entry, pairAt(row, column));
}

function isLost({ of }: Entry, pair: Square): boolean {
  return of !== undefined && (of[0] !== pair[0] || of[1] !== pair[1]);
}

/** The fact of a pair with what stands in its slots; the one that it was, if nothing about it has changed. */
function factAt(
  plan: Plan,
  desk: Desk,
  pair: Square,
  here: Entry | undefined,
  carried: Entry | undefined,
  ends: Ends,
  was: Fact | undefined,
): Fact {
  const units = here !== undefined && isLost(here, pair) ? undefined : here;
  const tens = carried !== undefined && isLost(carried, pair) ? undefined : carried;
  const covered = coveredBy(here !== units, carried !== tens);
  const due = pair[1] < 0 ? 0 : dueOf(plan, desk, pair, writtenValue({ units, tens }), ends);
  const final = ends.row;
  const given = was?.pair === pair && was.units === units && was.tens === tens;
  if (given && was.due === due && was.covered === covered && was.final === final) return was;
  const fact = { pair, due, units, tens, covered, final, amiss: 0 };
  fact.amiss = amissOf(fact, NOTHING_LOST);
  return fact;
}

function coveredBy(units: boolean, tens: boolean): readonly Part[] {
  if (units) return tens ? PARTS : UNITS_COVERED;
  return tens ? TENS_COVERED : NOTHING_COVERED;
}

/** The digits that name another pair than that of their slot, in the order in which their squares were written on. */
function lostIn(
  { paper }: Desk,
  units: readonly (Entry | undefined)[],
  tens: readonly (Entry | undefined)[],
  row: number,
): readonly Entry[] {
  const lost: Entry[] = [];
  for (let last = paper.touched; last !== null; last = last.before) {
    const [at, column] = last.square;
    if (at !== row) continue;
    const carried = tens[column];
    if (carried !== undefined && isLost(carried, pairAt(row, column - 1))) lost.push(carried);
    const here = units[column];
    if (here !== undefined && isLost(here, pairAt(row, column))) lost.push(here);
  }
  return lost.reverse();
}

/** Columns as far as the child's tiles reach. */
function tilesWide({ tiles }: Desk): number {
  let wide = tiles.bottom.length;
  while (wide > 0 && tiles.bottom[wide - 1] === null) wide -= 1;
  return wide;
}

/** One column to the right of the mat and one to its left as well. */
const PAIRS = Array.from({ length: 6 }, (_, row) =>
  Array.from({ length: 16 }, (__, index): Square => [row, index - 1]),
);

/** One and the same for all who ask. */
function pairAt(row: number, column: number): Square {
  return PAIRS[row]![column + 1]!;
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
