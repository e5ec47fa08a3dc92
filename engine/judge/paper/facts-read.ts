import type { Square } from '../../mat/geometry.ts';
import { isOver, placed } from '../ledger.ts';
import { kept, recalled, slots } from '../memo.ts';
import type { Ledger, Moment, Plan, Scene } from '../scene.ts';
import {
  type Ends,
  type Fact,
  isRight,
  isTurned,
  type RowRead,
  readOn,
  readWay,
} from './facts-row.ts';
import { isFinal } from './rows-written.ts';
import { type Entry, PARTS, type Part } from './squares.ts';

/** What one slot lacks, and what it holds that is not due there. */
export interface Amiss {
  readonly fact: Fact;
  readonly part: Part;
  readonly entry: Entry | undefined;
}

/** Digits of the facts of a row that were right where they stood, by `factSlot`. */
type RightDigits = Ledger['factDigits'][number];

/** A row of squares as it reads best: its slots as usual, or all swapped. */
export interface RowOfFacts extends Omit<RowRead, 'amiss'> {
  /** The slots are used the other way round. */
  readonly swapped: boolean;
  /** The other way round, in a row that does not show yet how it is written. */
  readonly rival: RowRead | null;
  /** Nothing in it is a fault, whatever stands in other rows. */
  readonly quiet: boolean;
  /** The digits that are or were right where they stand. */
  readonly right: RightDigits;
}

/** By row of the mat. */
export type Squares = readonly RowOfFacts[];

/** The squares row by row, the slots of each row as they read best: all as usual or all swapped. */
export function readSquares(scene: Scene, moment: Moment): Squares {
  const rows: RowOfFacts[] = [];
  for (let row = 0; row < scene.plan.rows; row += 1) rows.push(readRow(scene, moment, row));
  return rows;
}

const MOST_ROWS = 6;
/** A row that is finished or not, where all is over or not. */
const WAYS = slots(MOST_ROWS * 4);
const BEST = slots(MOST_ROWS * 4);

/** One slip with a fact may be wrong in both its digits. */
const ONE_SLIP = 2;

export function readRow(scene: Scene, moment: Moment, row: number): RowOfFacts {
  const { plan, position, ledger, memo } = scene;
  const over = isOver(moment);
  const final = row < plan.up.length ? isFinal(scene, moment, row) : over;
  const slot = row * 4 + (over ? 2 : 0) + (final ? 1 : 0);
  const { tiles } = position;
  const line = ledger.squareRows[row]!;
  const digits = ledger.factDigits[row];
  const known = recalled<RowOfFacts>(memo, BEST + slot, tiles, line, digits);
  if (known !== undefined) return known;
  const ways =
    recalled<Ways>(memo, WAYS + slot, tiles, line) ??
    kept(memo, WAYS + slot, waysOf(scene, row, { row: final, all: over }, slot), tiles, line);
  const best = bestOf(ways, digits, final);
  // With the digits that it finds right remembered, the row reads as it did.
  return kept(memo, BEST + slot, best, tiles, line, best.right);
}

/** A row read as usual; the other way round only where that leaves something amiss, else the same again. */
interface Ways {
  readonly usual: RowRead;
  readonly other: RowRead;
}

function waysOf({ plan, position, ledger, memo }: Scene, row: number, ends: Ends, slot: number) {
  const line = ledger.squareRows[row]!;
  const before = memo[WAYS + slot];
  const ways = before !== undefined && before.a === position.tiles ? (before.made as Ways) : null;
  const usual =
    (ways === null ? null : readOn(plan, position, line, ways.usual, ends, false)) ??
    readWay(plan, position, line, row, ends, false);
  if (usual.amiss === 0) return { usual, other: usual };
  const other =
    (ways === null || ways.other === ways.usual
      ? null
      : readOn(plan, position, line, ways.other, ends, true)) ??
    readWay(plan, position, line, row, ends, true);
  return { usual, other };
}

/**
 * An answer at each step may have to guess which way a row is written: of two slips, or of one with both digits of a
 * fact, in a row whose slots are swapped it may then ask two steps. What would be right the other way is not asked, as
 * long as the row is not finished and one slip may make the difference.
 */
function bestOf({ usual, other }: Ways, digits: RightDigits, final: boolean): RowOfFacts {
  const swapped = isSwapped(digits, usual, other);
  const close = !final && other !== usual && Math.abs(other.amiss - usual.amiss) <= ONE_SLIP;
  const rival = close ? (swapped ? usual : other) : null;
  const { found, lost } = swapped ? other : usual;
  const quiet = lost.length === 0 && !isLoud(found, digits);
  return { found, lost, swapped, rival, quiet, right: rightIn(found, digits) };
}

/** Whether the digit that this action wrote would be right the other way round, where that is not known yet. */
export function isDoubted({ rival }: RowOfFacts, act: number): boolean {
  if (rival === null) return false;
  for (let index = 0; index < rival.found.length; index += 1) {
    const fact = rival.found[index]!;
    if (fact.due === null) continue;
    if (fact.units?.act === act) return isRight(fact, 'units');
    if (fact.tens?.act === act) return isRight(fact, 'tens');
  }
  return false;
}

/** What of a row is not as due, and was not so before. */
export function amissIn({ found }: RowOfFacts, digits: RightDigits): Amiss[] {
  const amiss: Amiss[] = [];
  for (const fact of found) {
    if (fact.due === null) continue;
    for (const part of PARTS)
      if (!stands(digits, fact, part)) amiss.push({ fact, part, entry: fact[part] });
  }
  return amiss;
}

/** Whether anything is amiss but what merely is not there yet: that is no fault. */
function isLoud(facts: readonly Fact[], digits: RightDigits): boolean {
  for (let index = 0; index < facts.length; index += 1) {
    const fact = facts[index]!;
    const { due, units, tens, final } = fact;
    if (due === null || (units === undefined && tens === undefined && !final)) continue;
    const turned = final || isTurned(fact);
    if ((turned || units !== undefined) && !stands(digits, fact, 'units')) return true;
    if ((turned || tens !== undefined) && !stands(digits, fact, 'tens')) return true;
  }
  return false;
}

/** The list itself where nothing is right that was not so before. */
function rightIn(facts: readonly Fact[], before: RightDigits): RightDigits {
  let digits = before;
  for (let index = 0; index < facts.length; index += 1) {
    const fact = facts[index]!;
    if (fact.due === null) continue;
    if (fact.units !== undefined) digits = withRight(digits, fact, 'units', fact.units.digit);
    if (fact.tens !== undefined) digits = withRight(digits, fact, 'tens', fact.tens.digit);
  }
  return digits;
}

function withRight(digits: RightDigits, fact: Fact, part: Part, digit: number): RightDigits {
  const slot = factSlot(fact.pair, part);
  if (digits?.[slot] === digit || !isRight(fact, part)) return digits;
  return placed(digits ?? [], slot, digit);
}

/** Where both read equally well, the row is read on as it was read so far. */
function isSwapped(digits: RightDigits, usual: RowRead, other: RowRead): boolean {
  if (other.amiss !== usual.amiss || other === usual) return other.amiss < usual.amiss;
  return keptIn(digits, other.found) > keptIn(digits, usual.found);
}

/** How many digits stand, or are written over by what names another pair, that were right when they were written. */
function keptIn(digits: RightDigits, facts: readonly Fact[]): number {
  return facts.reduce((sum, fact) => {
    const stay = PARTS.filter((part) => {
      const before = rightBefore(digits, fact, part);
      return before !== undefined && (fact.covered.includes(part) || fact[part]?.digit === before);
    });
    return sum + stay.length;
  }, 0);
}

/** Index of a slot of a pair in its row of `Ledger.factDigits`; a pair may lie one square to the right of the mat. */
export function factSlot(pair: Square, part: Part): number {
  return 2 * (pair[1] + 1) + (part === 'units' ? 0 : 1);
}

/** The digit of a fact that was right where it stood. */
export function rightBefore(digits: RightDigits, { pair }: Fact, part: Part): number | undefined {
  return digits?.[factSlot(pair, part)];
}

/** Right, or right when it was written and not written over since. */
export function stands(digits: RightDigits, fact: Fact, part: Part): boolean {
  if (isRight(fact, part)) return true;
  const given = (part === 'units' ? fact.units : fact.tens)?.digit;
  const before = rightBefore(digits, fact, part);
  return given === undefined
    ? before !== undefined && fact.covered.includes(part)
    : before === given;
}

/** So many places, from the origin, have all their facts. */
export function readyIn({ plan }: { readonly plan: Plan }, squares: Squares): number {
  let ready = Number.POSITIVE_INFINITY;
  for (let row = 0; row < squares.length; row += 1) {
    const { found } = squares[row]!;
    for (let index = 0; index < found.length; index += 1) {
      const fact = found[index]!;
      if (!fact.final && row + fact.pair[1] < ready && lacks(plan, fact))
        ready = row + fact.pair[1];
    }
  }
  return ready;
}

function lacks({ up, across }: Plan, fact: Fact): boolean {
  if (fact.due !== null) {
    const units = fact.units === undefined && !isRight(fact, 'units');
    return units || (fact.tens === undefined && !isRight(fact, 'tens'));
  }
  const [row, column] = fact.pair;
  return (across[column] ?? 0) * (up[row] ?? 0) > 0;
}
