import type { Desk } from '../../mat/desk.ts';
import { isSameSquare, type Square } from '../../mat/geometry.ts';
import type { Entry, SquareLine } from '../../mat/sheet.ts';
import { replaced, trueDue } from '../ledger.ts';
import type { Plan } from '../scene.ts';
import { type Ends, type Fact, PARTS, type Part, type RowRead } from './squares.ts';

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

/** In place of a column. */
export const NOWHERE = -1;

/**
 * `swapped`: the slots are used the other way round. `before`: how the row read this way last; the facts that have not
 * changed since stay the same. `column`: that of the only square on which something else stands than before.
 */
export function readWay(
  plan: Plan,
  desk: Desk,
  row: number,
  ends: Ends,
  swapped: boolean,
  before: RowRead | undefined,
  column: number,
): RowRead {
  const beside =
    column === NOWHERE || before === undefined
      ? null
      : readBeside(plan, desk, row, ends, swapped, before, column);
  return beside ?? readWhole(plan, desk, row, ends, swapped, before);
}

function readWhole(
  plan: Plan,
  desk: Desk,
  row: number,
  ends: Ends,
  swapped: boolean,
  before: RowRead | undefined,
): RowRead {
  const line = desk.paper.squares[row];
  const known = before?.found ?? NO_FACTS;
  // Nothing comes from the right of the last column.
  const outermost = tensAt(line, -1, swapped);
  const first = outermost !== undefined && !isLost(outermost, pairAt(row, -1)) ? -1 : 0;
  const width = widthOf(plan, desk, line, swapped, row);
  const found = new Array<Fact>(width - first);
  let same = known.length === width - first;
  let amiss = 0;
  let covered = false;
  for (let column = first; column < width; column += 1) {
    const units = unitsAt(line, column, swapped);
    const tens = tensAt(line, column, swapped);
    const was = known[column - first];
    const fact = factAt(plan, desk, pairAt(row, column), units, tens, ends, was);
    found[column - first] = fact;
    same &&= fact === was;
    amiss += fact.amiss;
    covered ||= fact.covered !== NOTHING_COVERED;
  }
  const facts = same ? known : found;
  const astray = (first === 0 && outermost !== undefined) || isBeyond(line, swapped, width);
  const lost = covered || astray ? lostIn(line!, swapped, row) : NOTHING_LOST;
  // A digit that names another pair than its slot's speaks for the other way more than a wrong one.
  if (lost.length > 0) amiss = 2 * lost.length + amissIn(facts, ends, lost);
  return { found: facts, lost, amiss };
}

/** The same way with something else on the square in this column alone; null: the row has to be read as a whole. */
function readBeside(
  plan: Plan,
  desk: Desk,
  row: number,
  ends: Ends,
  swapped: boolean,
  before: RowRead,
  column: number,
): RowRead | null {
  if (before.lost.length > 0) return null;
  const line = desk.paper.squares[row];
  const first = before.found[0]!.pair[1];
  let { found, amiss } = before;
  for (let at = column - 1; at <= column; at += 1) {
    const units = unitsAt(line, at, swapped);
    const tens = tensAt(line, at, swapped);
    const was = found[at - first];
    if (was?.units === units && was?.tens === tens) continue;
    if (was === undefined || at < 0 || at >= plan.across.length) return null;
    const fact = factAt(plan, desk, was.pair, units, tens, ends, was);
    if (fact.covered !== NOTHING_COVERED) return null;
    found = replaced(found, at - first, fact);
    amiss += fact.amiss - was.amiss;
  }
  return found === before.found ? before : { found, lost: NOTHING_LOST, amiss };
}

/** Columns as far as the numbers, the tiles, and the digits that belong there reach. */
function widthOf(
  plan: Plan,
  desk: Desk,
  line: SquareLine | undefined,
  swapped: boolean,
  row: number,
): number {
  let width = Math.max(plan.across.length, tilesWide(desk));
  for (let column = width; line !== undefined && column < line.length; column += 1) {
    const pair = pairAt(row, column);
    if (isFor(unitsAt(line, column, swapped), pair) || isFor(tensAt(line, column, swapped), pair))
      width = column + 1;
  }
  return width;
}

/** Whether digits stand beyond the columns of the row: all of them are lost. */
function isBeyond(line: SquareLine | undefined, swapped: boolean, width: number): boolean {
  for (let column = width; line !== undefined && column < line.length; column += 1) {
    if (unitsAt(line, column, swapped) !== undefined) return true;
    if (tensAt(line, column, swapped) !== undefined) return true;
  }
  return false;
}

/** What stands where the units of the pair in this column belong. */
function unitsAt(
  line: SquareLine | undefined,
  column: number,
  swapped: boolean,
): Entry | undefined {
  const content = line === undefined || column < 0 ? undefined : line[column];
  return swapped ? content?.fromRight : content?.own;
}

/** What stands where its tens belong. */
function tensAt(line: SquareLine | undefined, column: number, swapped: boolean): Entry | undefined {
  return unitsAt(line, column + 1, !swapped);
}

function isFor(entry: Entry | undefined, pair: Square): boolean {
  return entry !== undefined && !isLost(entry, pair);
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
  const given = was?.pair === pair && was.units === units && was.tens === tens;
  if (given && was.due === due && was.covered === covered) {
    if (was.amiss === amissOf(was, ends, NOTHING_LOST)) return was;
  }
  const fact = { pair, due, units, tens, covered, amiss: 0 };
  fact.amiss = amissOf(fact, ends, NOTHING_LOST);
  return fact;
}

function coveredBy(units: boolean, tens: boolean): readonly Part[] {
  if (units) return tens ? PARTS : UNITS_COVERED;
  return tens ? TENS_COVERED : NOTHING_COVERED;
}

/** The digits that name another pair than that of their slot. */
function lostIn(line: SquareLine, swapped: boolean, row: number): readonly Entry[] {
  const lost: Entry[] = [];
  for (let column = 0; column < line.length; column += 1) {
    const units = unitsAt(line, column, swapped);
    if (units !== undefined && isLost(units, pairAt(row, column))) lost.push(units);
    const tens = tensAt(line, column - 1, swapped);
    if (tens !== undefined && isLost(tens, pairAt(row, column - 1))) lost.push(tens);
  }
  return lost;
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

function amissIn(facts: readonly Fact[], ends: Ends, lost: readonly Entry[]): number {
  let amiss = 0;
  for (let index = 0; index < facts.length; index += 1) amiss += amissOf(facts[index]!, ends, lost);
  return amiss;
}

/** A digit that would come from beyond the last column speaks for the other way more than a wrong one. */
function amissOf(fact: Fact, ends: Ends, lost: readonly Entry[]): number {
  const written = (fact.units === undefined ? 0 : 1) + (fact.tens === undefined ? 0 : 1);
  if (fact.pair[1] < 0) return 2 * written;
  if (fact.due === null) return written;
  if (written === 0 && !ends.row) return 0;
  if (isTurned(fact)) return 1;
  return (isAmiss(fact, 'units', ends, lost) ? 1 : 0) + (isAmiss(fact, 'tens', ends, lost) ? 1 : 0);
}

function isAmiss(fact: Fact, part: Part, ends: Ends, lost: readonly Entry[]): boolean {
  if (isRight(fact, part) || isExcused(fact, part, lost)) return false;
  return ends.row || fact[part] !== undefined;
}
