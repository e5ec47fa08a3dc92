import type { Desk } from '../../mat/desk.ts';
import type { Entry, SquareLine } from '../../mat/sheet.ts';
import { placed, trueDue } from '../ledger.ts';
import { kept, recalled, slots } from '../memo.ts';
import type { Plan, Scene } from '../scene.ts';
import {
  columnIn,
  digitDue,
  dueAt,
  endColumn,
  entryAt,
  factAt,
  factsOf,
  firstColumn,
  isRight,
  isTurned,
  lostOf,
  NOWHERE,
  pairAt,
  readBeside,
  readWay,
  slotChanged,
  valueAt,
} from './facts-row.ts';
import {
  type Ends,
  type Fact,
  type FactDigits,
  PARTS,
  type Part,
  type RowKept,
  type RowOfFacts,
  type RowRead,
  type RowWay,
  type Squares,
} from './squares.ts';

/** What one slot lacks, and what it holds that is not due there. */
export interface Amiss {
  readonly fact: Fact;
  readonly part: Part;
  readonly entry: Entry | undefined;
}

/** As it read when `line` stood there and this was kept of it. */
export function asKept(
  plan: Plan,
  row: number,
  line: SquareLine | undefined,
  known: RowKept,
): RowOfFacts {
  const { tiles, ends, swapped, lapsed } = known;
  const usual = readWay(plan, row, line, tiles, ends, false);
  const other = usual.amiss === 0 ? null : readWay(plan, row, line, tiles, ends, true);
  return swapped ? rowOf(plan, other!, usual, lapsed) : rowOf(plan, usual, other, lapsed);
}

/** `past`: how it read when it was last looked at. */
export function readRow(
  plan: Plan,
  row: number,
  line: SquareLine | undefined,
  tiles: Desk['tiles'],
  ends: Ends,
  past: RowOfFacts | undefined,
): RowOfFacts {
  const alike = past !== undefined && past.best.tiles === tiles && past.best.ends === ends;
  const slot = alike ? slotChanged(past.best.line, line) : NOWHERE;
  const usual =
    slot === NOWHERE
      ? readWay(plan, row, line, tiles, ends, false)
      : readBeside(plan, usualOf(past!), line, slot);
  const before = slot === NOWHERE ? null : swappedOf(past!);
  const other =
    usual.amiss === 0
      ? null
      : before === null
        ? readWay(plan, row, line, tiles, ends, true)
        : readBeside(plan, before, line, slot);
  const swapped = other !== null && isBetter(plan, other, usual, past);
  const best = swapped ? other : usual;
  const lapsed = past === undefined ? NO_DIGITS : lapsedSince(plan, past, best, slot);
  return rowOf(plan, best, swapped ? usual : other, lapsed);
}

function rowOf(plan: Plan, best: RowRead, other: RowRead | null, lapsed: FactDigits): RowOfFacts {
  const quiet = best.amiss === 0 || (best.lost === 0 && !isLoud(plan, best, lapsed));
  return { best, other, quiet, lapsed };
}

function usualOf({ best, other }: RowOfFacts): RowRead {
  return best.swapped ? other! : best;
}

function swappedOf({ best, other }: RowOfFacts): RowRead | null {
  return best.swapped ? best : other;
}

const NO_DIGITS: FactDigits = [];

/** One slip with a fact may be wrong in both its digits. */
const ONE_SLIP = 2;

/**
 * Whether the digit that this action wrote would be right the other way round, where that is not known yet.
 * An answer at each step may have to guess which way a row is written: of two slips, or of one with both digits of a
 * fact, in a row whose slots are swapped it may then ask two steps. What would be right the other way is not asked, as
 * long as the row is not finished and one slip may make the difference.
 */
export function isDoubted(plan: Plan, { best, other }: RowOfFacts, act: number): boolean {
  if (other === null || best.ends.row) return false;
  if (Math.abs(other.amiss - best.amiss) > ONE_SLIP) return false;
  for (let column = -1; column <= other.line!.length; column += 1) {
    for (let index = 0; index < PARTS.length; index += 1) {
      const part = PARTS[index]!;
      if (entryAt(other, column, part)?.act !== act) continue;
      return rightDigit(plan, other, column, part) !== undefined;
    }
  }
  return false;
}

/** What of a row is not as due, and was not so before. */
export function amissIn(plan: Plan, { best, lapsed }: RowOfFacts): readonly Amiss[] {
  const amiss: Amiss[] = [];
  const end = endColumn(plan, best);
  for (let column = firstColumn(best); column < end; column += 1) {
    const due = dueAt(plan, best, column);
    if (due === null || valueAt(best, column) === due) continue;
    const fact = factAt(plan, best, column);
    for (const part of PARTS)
      if (!stands(lapsed, fact, part)) amiss.push({ fact, part, entry: fact[part] });
  }
  return amiss;
}

/** The digits that name another pair, in the order in which their squares were first written on. */
export function lostIn({ best }: RowOfFacts): readonly Entry[] {
  const lost = lostOf(best);
  return lost.length < 2 ? lost : inOrder(lost, best.line!);
}

function inOrder(lost: readonly Entry[], line: SquareLine): readonly Entry[] {
  const earlier = ({ square }: Entry) => line[square[1]]!.earlier;
  return lost.slice().sort((one, other) => earlier(one) - earlier(other));
}

/** Whether anything is amiss but what merely is not there yet: that is no fault. */
function isLoud(plan: Plan, best: RowRead, lapsed: FactDigits): boolean {
  const { ends } = best;
  const end = endColumn(plan, best);
  for (let column = firstColumn(best); column < end; column += 1) {
    const fact = factAt(plan, best, column);
    const { due, units, tens } = fact;
    if (due === null || (units === undefined && tens === undefined && !ends.row)) continue;
    const turned = ends.row || isTurned(fact);
    if ((turned || units !== undefined) && !stands(lapsed, fact, 'units')) return true;
    if ((turned || tens !== undefined) && !stands(lapsed, fact, 'tens')) return true;
  }
  return false;
}

/**
 * What was right when the row was last looked at, and before, and is not right as it reads now. `slot`: the only one in
 * which something else stands.
 */
function lapsedSince(plan: Plan, past: RowOfFacts, now: RowRead, slot: number): FactDigits {
  const was = past.best;
  const { line } = was;
  let digits = past.lapsed;
  if (line === undefined) return digits;
  const beside = slot !== NOWHERE && was.swapped === now.swapped;
  const first = beside ? columnIn(was.swapped, slot) : -1;
  const last = beside ? first : line.length - 1;
  for (let at = first; at <= last; at += 1) {
    for (let each = 0; each < PARTS.length; each += 1) {
      const part = PARTS[each]!;
      const digit = rightDigit(plan, was, at, part);
      if (digit === undefined || rightDigit(plan, now, at, part) !== undefined) continue;
      const index = factSlot(at, part);
      if (digits[index] !== digit) digits = placed(digits, index, digit);
    }
  }
  return digits;
}

/** What stands there and is due. */
function rightDigit(plan: Plan, way: RowWay, column: number, part: Part): number | undefined {
  const digit = entryAt(way, column, part)?.digit;
  if (digit === undefined) return undefined;
  const due = dueAt(plan, way, column);
  return due !== null && digitDue(due, part) === digit ? digit : undefined;
}

/** Where both read equally well, the row is read on as it was read so far. */
function isBetter(
  plan: Plan,
  other: RowRead,
  usual: RowRead,
  past: RowOfFacts | undefined,
): boolean {
  if (other.amiss !== usual.amiss) return other.amiss < usual.amiss;
  return past !== undefined && stayIn(plan, other, past) > stayIn(plan, usual, past);
}

/** How many digits stand, or are written over by what names another pair, that were right when they were written. */
function stayIn(plan: Plan, now: RowWay, { best, lapsed }: RowOfFacts): number {
  let stay = 0;
  for (const fact of factsOf(plan, now))
    for (const part of PARTS) {
      const before = rightDigit(plan, best, fact.pair[1], part) ?? rightBefore(lapsed, fact, part);
      if (before === undefined) continue;
      if (fact.covered.includes(part) || fact[part]?.digit === before) stay += 1;
    }
  return stay;
}

/** Index of a slot of a pair among the digits of its row; a pair may lie one square to the right of the mat. */
function factSlot(column: number, part: Part): number {
  return 2 * (column + 1) + (part === 'units' ? 0 : 1);
}

/** The digit of a fact that was right where it stood. */
export function rightBefore(lapsed: FactDigits, { pair }: Fact, part: Part): number | undefined {
  return lapsed[factSlot(pair[1], part)];
}

/** Right, or right when it was written and not written over since. */
export function stands(lapsed: FactDigits, fact: Fact, part: Part): boolean {
  if (isRight(fact, part)) return true;
  const given = (part === 'units' ? fact.units : fact.tens)?.digit;
  const before = rightBefore(lapsed, fact, part);
  return given === undefined
    ? before !== undefined && fact.covered.includes(part)
    : before === given;
}

const READY = slots(1);

/** So many places, from the origin, have all their facts. */
export function readyIn({ plan, memo }: Scene, squares: Squares): number {
  return recalled(memo, READY, squares) ?? kept(memo, READY, readyNow(plan, squares), squares);
}

function readyNow(plan: Plan, squares: Squares): number {
  let ready = Number.POSITIVE_INFINITY;
  for (let row = 0; row < squares.length; row += 1) {
    const { best } = squares[row]!;
    if (best.ends.row) continue;
    const end = endColumn(plan, best);
    for (let column = firstColumn(best); column < end && row + column < ready; column += 1) {
      if (lacks(plan, best, column)) ready = row + column;
    }
  }
  return ready;
}

function lacks(plan: Plan, way: RowWay, column: number): boolean {
  const due = dueAt(plan, way, column);
  if (due === null) return trueDue(plan, pairAt(way.row, column)) > 0;
  const units = entryAt(way, column, 'units');
  const tens = entryAt(way, column, 'tens');
  return (
    (units === undefined && digitDue(due, 'units') > 0) ||
    (tens === undefined && digitDue(due, 'tens') > 0)
  );
}
