import type { Desk } from '../../mat/desk.ts';
import type { Square } from '../../mat/geometry.ts';
import { isOver, placed, replaced } from '../ledger.ts';
import { kept, lastOf, recalled, slots } from '../memo.ts';
import type { Ledger, Moment, Plan, Scene } from '../scene.ts';
import {
  ALL_ENDED,
  type Ends,
  type Fact,
  isRight,
  isTurned,
  NOT_ENDED,
  ROW_ENDED,
  type RowRead,
  readWay,
  readWith,
  type Written,
} from './facts-row.ts';
import { isFinal } from './rows-written.ts';
import { type Entry, PARTS, type Part, type SquareRow } from './squares.ts';

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
  /** What it was read from. */
  readonly line: SquareRow;
  readonly ends: Ends;
  readonly usual: RowRead;
  /** The other way round; the usual way again where that leaves nothing amiss. */
  readonly other: RowRead;
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

/** In mid-work, and when all is over. */
const SQUARES = slots(2);

/** The squares row by row, the slots of each row as they read best: all as usual or all swapped. */
export function readSquares(scene: Scene, moment: Moment): Squares {
  const { position, ledger, memo } = scene;
  const { tiles, finished } = position;
  const { squareRows, factDigits } = ledger;
  const over = isOver(moment) ? 1 : 0;
  const asked = moment.at === 'row' ? moment.row : -1;
  const slot = SQUARES + over;
  const known = recalled<Squares>(memo, slot, tiles, squareRows, factDigits, finished.rows, asked);
  if (known !== undefined) return known;
  const before = lastOf<Squares>(memo, slot, tiles) ?? lastOf(memo, SQUARES + 1 - over, tiles);
  const squares = readAgain(scene, moment, before);
  return kept(memo, slot, squares, tiles, squareRows, factDigits, finished.rows, asked);
}

/** With the same tiles as before, only the rows where something else stands are read again. */
function readAgain(scene: Scene, moment: Moment, before: Squares | undefined): Squares {
  const { plan, position, ledger } = scene;
  let changed = before === undefined;
  const rows: RowOfFacts[] = [];
  for (let row = 0; row < plan.rows; row += 1) {
    const known = before?.[row];
    const line = ledger.squareRows[row]!;
    const digits = ledger.factDigits[row];
    const ends = endsOf(scene, moment, row);
    // With the digits that it finds right remembered, a row reads as it did.
    const same =
      known !== undefined && known.line === line && known.right === digits && known.ends === ends;
    rows.push(same ? known : readRow(plan, position, row, line, digits, ends, known));
    changed ||= !same;
  }
  return changed ? rows : before!;
}

/** The squares in mid-work with something else in one slot of a row; in the other rows they are as they were before. */
export function readWritten(
  before: Scene,
  after: Desk,
  row: number,
  line: SquareRow,
  written: Written,
): Squares {
  const { plan, ledger } = before;
  const squares = readSquares(before, NOW);
  const known = squares[row]!;
  const { ends } = known;
  const usual =
    readWith(plan, after, known.usual, written, false) ??
    readWay(plan, after, line, row, ends, false, known.usual);
  const turned = known.other === known.usual ? undefined : known.other;
  const other =
    usual.amiss === 0
      ? usual
      : ((turned && readWith(plan, after, turned, written, true)) ??
        readWay(plan, after, line, row, ends, true, turned));
  const best = bestOf(line, ledger.factDigits[row], ends, usual, other, known);
  return replaced(squares, row, best);
}

/** Remembers that they read so, in mid-work, with what was found right remembered as well. */
export function keepSquares({ position, memo }: Scene, ledger: Ledger, squares: Squares): void {
  const { tiles, finished } = position;
  const { squareRows, factDigits } = ledger;
  kept(memo, SQUARES, squares, tiles, squareRows, factDigits, finished.rows, -1);
}

function endsOf(scene: Scene, moment: Moment, row: number): Ends {
  if (isOver(moment)) return ALL_ENDED;
  return row < scene.plan.up.length && isFinal(scene, moment, row) ? ROW_ENDED : NOT_ENDED;
}

const NOW: Moment = { at: 'now' };

/** One slip with a fact may be wrong in both its digits. */
const ONE_SLIP = 2;

function readRow(
  plan: Plan,
  desk: Desk,
  row: number,
  line: SquareRow,
  digits: RightDigits,
  ends: Ends,
  known: RowOfFacts | undefined,
): RowOfFacts {
  const usual = readWay(plan, desk, line, row, ends, false, known?.usual);
  const turned = known?.other === known?.usual ? undefined : known?.other;
  const other = usual.amiss === 0 ? usual : readWay(plan, desk, line, row, ends, true, turned);
  return bestOf(line, digits, ends, usual, other, known);
}

/**
 * An answer at each step may have to guess which way a row is written: of two slips, or of one with both digits of a
 * fact, in a row whose slots are swapped it may then ask two steps. What would be right the other way is not asked, as
 * long as the row is not finished and one slip may make the difference.
 */
function bestOf(
  line: SquareRow,
  digits: RightDigits,
  ends: Ends,
  usual: RowRead,
  other: RowRead,
  known: RowOfFacts | undefined,
): RowOfFacts {
  const swapped = isSwapped(digits, usual, other);
  const close = !ends.row && other !== usual && Math.abs(other.amiss - usual.amiss) <= ONE_SLIP;
  const rival = close ? (swapped ? usual : other) : null;
  const { found, lost, amiss } = swapped ? other : usual;
  const quiet = amiss === 0 || (lost.length === 0 && !isLoud(found, digits));
  const right = rightIn(found, digits, known?.right === digits ? known?.found : undefined);
  return { line, ends, usual, other, found, lost, swapped, rival, quiet, right };
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

/** The list itself where nothing is right that was not so before; `known`: the facts that it holds already. */
function rightIn(
  facts: readonly Fact[],
  before: RightDigits,
  known: readonly Fact[] | undefined,
): RightDigits {
  let digits = before;
  for (let index = 0; index < facts.length; index += 1) {
    const fact = facts[index]!;
    if (fact.due === null || fact === known?.[index]) continue;
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
