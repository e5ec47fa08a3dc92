import type { Square } from '../../mat/geometry.ts';
import type { Entry, SquareLine } from '../../mat/sheet.ts';
import { isOver, placed } from '../ledger.ts';
import { kept, recalled, slots } from '../memo.ts';
import type { Moment, Plan, Scene } from '../scene.ts';
import {
  ALL_ENDED,
  isRight,
  isTurned,
  NOT_ENDED,
  NOWHERE,
  ROW_ENDED,
  readWay,
} from './facts-row.ts';
import { isFinal } from './rows-written.ts';
import {
  type Ends,
  type Fact,
  type FactDigits,
  PARTS,
  type Part,
  type RowOfFacts,
  type RowRead,
  type Squares,
} from './squares.ts';

/** What one slot lacks, and what it holds that is not due there. */
export interface Amiss {
  readonly fact: Fact;
  readonly part: Part;
  readonly entry: Entry | undefined;
}

/** In mid-work, and when all is over. */
const SQUARES = slots(2);

/** The squares row by row, the slots of each row as they read best: all as usual or all swapped. */
export function readSquares(scene: Scene, moment: Moment): Squares {
  const { position, ledger, memo } = scene;
  if (isCurrent(scene, moment)) return ledger.squares;
  const { tiles, paper, finished } = position;
  const asked = moment.at === 'row' ? moment.row : -1;
  const slot = SQUARES + (isOver(moment) ? 1 : 0);
  return (
    recalled(memo, slot, ledger.squares, tiles, paper.squares, finished.rows, asked) ??
    kept(
      memo,
      slot,
      readAgain(scene, moment),
      ledger.squares,
      tiles,
      paper.squares,
      finished.rows,
      asked,
    )
  );
}

/** Whether they read as they did when they were last looked at. */
function isCurrent(scene: Scene, moment: Moment): boolean {
  for (let row = 0; row < scene.plan.rows; row += 1) {
    if (!isSame(scene, moment, row)) return false;
  }
  return true;
}

function isSame(scene: Scene, moment: Moment, row: number): boolean {
  const { tiles, paper } = scene.position;
  const known = scene.ledger.squares[row];
  if (known === undefined || known.line !== paper.squares[row] || known.tiles !== tiles) {
    return false;
  }
  return known.ends === endsOf(scene, moment, row);
}

/** Only the rows where something else stands are read again. */
export function readAgain(scene: Scene, moment: Moment): Squares {
  const { plan, ledger } = scene;
  const rows = new Array<RowOfFacts>(plan.rows);
  for (let row = 0; row < plan.rows; row += 1) {
    const known = ledger.squares[row];
    rows[row] = isSame(scene, moment, row) ? known! : readRow(scene, moment, row, known);
  }
  return rows;
}

function endsOf(scene: Scene, moment: Moment, row: number): Ends {
  if (isOver(moment)) return ALL_ENDED;
  return row < scene.plan.up.length && isFinal(scene, moment, row) ? ROW_ENDED : NOT_ENDED;
}

/** `known`: how it read when it was last looked at. */
function readRow(
  scene: Scene,
  moment: Moment,
  row: number,
  known: RowOfFacts | undefined,
): RowOfFacts {
  const { plan, position } = scene;
  const { tiles, paper } = position;
  const line = paper.squares[row];
  const ends = endsOf(scene, moment, row);
  const alike = known !== undefined && known.tiles === tiles && known.ends === ends;
  const column = alike ? onlyChange(known.line, line) : NOWHERE;
  const usual = readWay(plan, position, row, ends, false, known?.usual, column);
  const other =
    usual.amiss === 0 ? usual : readWay(plan, position, row, ends, true, otherWay(known), column);
  const best = isBetter(known, other, usual) ? other : usual;
  const lapsed = known === undefined ? NO_DIGITS : lapsedSince(known, best.found);
  const quiet = best.amiss === 0 || (best.lost.length === 0 && !isLoud(best.found, ends, lapsed));
  return { tiles, line, ends, usual, other, best, quiet, lapsed };
}

const NO_DIGITS: FactDigits = [];

/** The column of the only square on which something else stands. */
function onlyChange(before: SquareLine | undefined, now: SquareLine | undefined): number {
  let only = NOWHERE;
  if (before === undefined || now === undefined) return only;
  for (let column = 0; column < now.length; column += 1) {
    if (now[column] === before[column]) continue;
    if (only !== NOWHERE) return NOWHERE;
    only = column;
  }
  return only;
}

function otherWay(known: RowOfFacts | undefined): RowRead | undefined {
  return known === undefined || known.other === known.usual ? undefined : known.other;
}

/** The slots are used the other way round. */
export function isSwapped({ best, usual }: RowOfFacts): boolean {
  return best !== usual;
}

/** One slip with a fact may be wrong in both its digits. */
const ONE_SLIP = 2;

/**
 * Whether the digit that this action wrote would be right the other way round, where that is not known yet.
 * An answer at each step may have to guess which way a row is written: of two slips, or of one with both digits of a
 * fact, in a row whose slots are swapped it may then ask two steps. What would be right the other way is not asked, as
 * long as the row is not finished and one slip may make the difference.
 */
export function isDoubted({ ends, usual, other, best }: RowOfFacts, act: number): boolean {
  if (ends.row || other === usual || Math.abs(other.amiss - usual.amiss) > ONE_SLIP) return false;
  const { found } = best === usual ? other : usual;
  for (let index = 0; index < found.length; index += 1) {
    const fact = found[index]!;
    if (fact.due === null) continue;
    if (fact.units?.act === act) return isRight(fact, 'units');
    if (fact.tens?.act === act) return isRight(fact, 'tens');
  }
  return false;
}

/** What of a row is not as due, and was not so before. */
export function amissIn({ best, lapsed }: RowOfFacts): Amiss[] {
  const amiss: Amiss[] = [];
  for (const fact of best.found) {
    if (fact.due === null) continue;
    for (const part of PARTS)
      if (!stands(lapsed, fact, part)) amiss.push({ fact, part, entry: fact[part] });
  }
  return amiss;
}

/** The digits that name another pair, in the order in which their squares were first written on. */
export function lostIn({ best, line }: RowOfFacts): readonly Entry[] {
  if (best.lost.length < 2) return best.lost;
  const earlier = ({ square }: Entry) => line![square[1]]!.earlier;
  return best.lost.slice().sort((one, other) => earlier(one) - earlier(other));
}

/** Whether anything is amiss but what merely is not there yet: that is no fault. */
function isLoud(facts: readonly Fact[], ends: Ends, lapsed: FactDigits): boolean {
  for (let index = 0; index < facts.length; index += 1) {
    const fact = facts[index]!;
    const { due, units, tens } = fact;
    if (due === null || (units === undefined && tens === undefined && !ends.row)) continue;
    const turned = ends.row || isTurned(fact);
    if ((turned || units !== undefined) && !stands(lapsed, fact, 'units')) return true;
    if ((turned || tens !== undefined) && !stands(lapsed, fact, 'tens')) return true;
  }
  return false;
}

/** What was right when the row was last looked at, and before, and is not right among these facts. */
function lapsedSince({ best, lapsed }: RowOfFacts, now: readonly Fact[]): FactDigits {
  const before = best.found;
  if (now === before) return lapsed;
  let digits = lapsed;
  const moved = (before[0]?.pair[1] ?? 0) - (now[0]?.pair[1] ?? 0);
  for (let index = 0; index < before.length; index += 1) {
    const was = before[index]!;
    const fact = now[index + moved];
    if (fact === was) continue;
    for (const part of PARTS) {
      const digit = rightDigit(was, part);
      if (digit === undefined || rightDigit(fact, part) !== undefined) continue;
      const slot = factSlot(was.pair, part);
      if (digits[slot] !== digit) digits = placed(digits, slot, digit);
    }
  }
  return digits;
}

/** What stands there and is due. */
function rightDigit(fact: Fact | undefined, part: Part): number | undefined {
  if (fact === undefined || fact.due === null) return undefined;
  const entry = part === 'units' ? fact.units : fact.tens;
  return entry !== undefined && isRight(fact, part) ? entry.digit : undefined;
}

/** Where both read equally well, the row is read on as it was read so far. */
function isBetter(known: RowOfFacts | undefined, other: RowRead, usual: RowRead): boolean {
  if (other.amiss !== usual.amiss || other === usual) return other.amiss < usual.amiss;
  return known !== undefined && keptIn(known, other.found) > keptIn(known, usual.found);
}

/** How many digits stand, or are written over by what names another pair, that were right when they were written. */
function keptIn({ best, lapsed }: RowOfFacts, facts: readonly Fact[]): number {
  return facts.reduce((sum, fact) => {
    const was = best.found.find(({ pair }) => pair === fact.pair);
    const stay = PARTS.filter((part) => {
      const before = rightDigit(was, part) ?? rightBefore(lapsed, fact, part);
      return before !== undefined && (fact.covered.includes(part) || fact[part]?.digit === before);
    });
    return sum + stay.length;
  }, 0);
}

/** Index of a slot of a pair among the digits of its row; a pair may lie one square to the right of the mat. */
function factSlot(pair: Square, part: Part): number {
  return 2 * (pair[1] + 1) + (part === 'units' ? 0 : 1);
}

/** The digit of a fact that was right where it stood. */
export function rightBefore(lapsed: FactDigits, { pair }: Fact, part: Part): number | undefined {
  return lapsed[factSlot(pair, part)];
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

/** So many places, from the origin, have all their facts. */
export function readyIn({ plan }: { readonly plan: Plan }, squares: Squares): number {
  let ready = Number.POSITIVE_INFINITY;
  for (let row = 0; row < squares.length; row += 1) {
    const { best, ends } = squares[row]!;
    for (let index = 0; index < best.found.length && !ends.row; index += 1) {
      const fact = best.found[index]!;
      if (row + fact.pair[1] < ready && lacks(plan, fact)) ready = row + fact.pair[1];
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
