import { beyond } from './columns.ts';
import { carryStayed, stayed } from './kept-line.ts';
import type { ColumnRead, KeptLine, Mark, Written } from './line-reading.ts';

/** Carries are sets of small numbers, bit c for a carry of c: more than one may be what the child had in mind. */
type Carries = number;
const NO_CARRY: Carries = 1;
/** More columns than any paper has. */
const MOST_COLUMNS = 40;

/** Below the lowest column nothing is due and nothing carried. */
const BELOW_ALL: ColumnRead = {
  given: null,
  due: 0,
  mark: 'absent',
  carry: 'none',
  noted: null,
  carryDue: 0,
  hands: NO_CARRY,
  likely: 0,
  known: true,
  blank: true,
};

/**
 * Reads the digits of a line from the lowest up, each with what the one before it hands on. `kept`: what was right in
 * it before. `short`: only as far as anything is written, but always the lowest.
 */
export function readColumns(
  written: Written,
  kept: KeptLine | undefined,
  short: boolean,
): readonly ColumnRead[] {
  const same = kept === undefined ? 0 : columnsAsBefore(written, kept);
  return readOn(written, kept, short, kept?.reading.reads ?? NO_READS, same);
}

const NO_READS: readonly ColumnRead[] = [];

/** The columns above those that were read while the line was short: nothing is written there. */
export function readAbove(written: Written, reads: readonly ColumnRead[]): readonly ColumnRead[] {
  return readOn(written, undefined, false, reads, reads.length);
}

/** `known`: so many of the lowest columns read as in `before`. */
function readOn(
  written: Written,
  kept: KeptLine | undefined,
  short: boolean,
  before: readonly ColumnRead[],
  known: number,
): readonly ColumnRead[] {
  const { highest, spec } = written;
  // At least so many; above them only what is carried.
  const least = Math.max(highest + 1, short ? 1 : spec.columns.list.length, known);
  const reads = new Array<ColumnRead>(least);
  for (let column = 0; column < known; column += 1) reads[column] = before[column]!;
  let below = known > 0 ? before[known - 1]! : BELOW_ALL;
  for (let column = known; column < MOST_COLUMNS; column += 1) {
    if (column >= least && (short || below.hands === NO_CARRY)) break;
    below = readColumn(written, kept, column, below);
    reads[column] = below;
  }
  return reads;
}

/** So many columns, from the lowest, read as they did when the line was kept: nothing in them or below has changed. */
function columnsAsBefore(now: Written, { reading, ended }: KeptLine): number {
  const { spec, written, reads } = reading;
  const { final, ready } = now.spec.progress;
  const before = spec.progress;
  if (spec.columns !== now.spec.columns || written.carried !== now.carried) return 0;
  if (ended !== now.ended || (before.final && !final)) return 0;
  // What is known already is not read otherwise at the finish.
  const known = final && !before.final;
  if (!final && before.ready !== ready) return 0;
  const from = spec.lowest + now.shift;
  const carriesFrom = spec.lowest + now.carried;
  for (let column = 0; column < reads.length; column += 1) {
    const at = from + column;
    const over = carriesFrom + column;
    if (written.digits[at] !== now.digits[at] || written.carries[over] !== now.carries[over])
      return column;
    if (known && !reads[column]!.known) return column;
  }
  return reads.length;
}

function readColumn(
  written: Written,
  kept: KeptLine | undefined,
  index: number,
  under: ColumnRead,
): ColumnRead {
  const { spec, shift, carried, digits, carries } = written;
  const { columns, lowest: first } = spec;
  const { final, ready } = spec.progress;
  const { base, most } = columns.list[index] ?? beyond(columns, index);
  const at = first + shift + index;
  const over = first + carried + index;
  const given = digits[at] ?? null;
  const noted = carries[over] ?? null;
  // What may be carried in, and what most likely is; a carry that is written decides.
  let { hands: into, likely } = under;
  const sure = under.known || final;
  let carry: ColumnRead['carry'] = 'none';
  if (noted !== null) {
    if (has(into, noted) || carryStayed(kept, carried, over, noted)) carry = 'right';
    else carry = sure ? 'wrong' : 'waiting';
    into = 1 << noted;
    likely = noted;
  }
  const judged = final || (index < ready && (!columns.carrying || sure || noted !== null));
  const before = given === null ? null : stayed(kept, at, given);
  const fits = fitting(into, base, given ?? 0);
  const due = (base + likely) % 10;
  let mark: Mark;
  if (given === null) mark = markOfNone(written, index, under, into, likely, fits);
  else if (before !== null) mark = 'right';
  else if (!judged) mark = 'waiting';
  else mark = fits !== 0 ? 'right' : 'wrong';
  const carryDue = under.likely;
  const known = final || (judged && mark !== 'missing' && mark !== 'waiting');
  const blank = under.blank && given === null;
  if (mark === 'absent') {
    const hands = NO_CARRY;
    return { given, due, mark, carry, noted, carryDue, hands, likely: 0, known, blank };
  }
  /*
   * It hands on what its digit was made with, where it is due; after a wrong digit or none, what the due value hands
   * on (a slip of the pen) or any value that ends in that digit and that the column can have (a misremembered fact).
   */
  if (fits !== 0 && mark !== 'missing') {
    const hands = tensWith(fits, base) | (before ?? 0);
    const best = has(fits, likely) ? likely : lowest(fits);
    likely = Math.floor((base + best) / 10);
    return { given, due, mark, carry, noted, carryDue, hands, likely, known, blank };
  }
  const any = below(Math.floor((most - (given ?? 0)) / 10));
  const hands = tensWith(into, base) | (before ?? 0) | any;
  likely = Math.floor((base + likely) / 10);
  return { given, due, mark, carry, noted, carryDue, hands, likely, known, blank };
}

/** What a column is without a digit. `zeros`: the carries with which it makes a 0. */
function markOfNone(
  { spec, ended }: Written,
  index: number,
  under: ColumnRead,
  into: Carries,
  likely: number,
  zeros: Carries,
): Mark {
  // Above a digit that is not there either, only what is due there counts.
  const nothing = under.mark === 'missing' ? likely === 0 : has(into, 0);
  if (ended !== null && index >= ended) return 'absent';
  if (index >= spec.columns.needed && nothing) return 'absent';
  return index < spec.decimals && under.blank && zeros !== 0 ? 'leftOut' : 'missing';
}

function has(carries: Carries, carry: number): boolean {
  return (carries & (1 << carry)) !== 0;
}

/** The carries with which the column ends in the digit. */
function fitting(carries: Carries, base: number, digit: number): Carries {
  if (isSingle(carries)) return (base + lowest(carries)) % 10 === digit ? carries : 0;
  let fits = 0;
  for (let carry = 0; carries >> carry > 0; carry += 1) {
    if (has(carries, carry) && (base + carry) % 10 === digit) fits |= 1 << carry;
  }
  return fits;
}

/** What the column hands on with each of the carries. */
function tensWith(carries: Carries, base: number): Carries {
  if (isSingle(carries)) return 1 << Math.floor((base + lowest(carries)) / 10);
  let found = 0;
  for (let carry = 0; carries >> carry > 0; carry += 1) {
    if (has(carries, carry)) found |= 1 << Math.floor((base + carry) / 10);
  }
  return found;
}

/** All carries from 0 to `most`; none where that is negative. */
function below(most: number): Carries {
  return most < 0 ? 0 : (1 << (most + 1)) - 1;
}

function isSingle(carries: Carries): boolean {
  return carries !== 0 && (carries & (carries - 1)) === 0;
}

function lowest(carries: Carries): number {
  return 31 - Math.clz32(carries & -carries);
}
