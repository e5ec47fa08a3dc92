import type { KeptLine } from '../scene.ts';
import { beyond, type Columns } from './columns.ts';

/**
 * `absent`: nothing is due there; `leftOut`: a zero at the end of the decimals; `waiting`: written, but what it
 * is made of is not complete yet; `missing`: due and not written.
 */
export type Mark = 'right' | 'wrong' | 'missing' | 'absent' | 'leftOut' | 'waiting';

export interface ColumnRead {
  readonly given: number | null;
  readonly due: number;
  readonly mark: Mark;
  /** What is carried in as written: `none` written, as due, not as due, not to be said yet. */
  readonly carry: 'none' | 'right' | 'wrong' | 'waiting';
  readonly noted: number | null;
  /** What it may hand on, bit c for a carry of c. */
  readonly hands: number;
  readonly carryDue: number;
}

/** What stands on paper, by place from the origin. */
export interface Written {
  readonly digits: readonly (number | undefined)[];
  readonly carries: readonly (number | undefined)[];
  /** Where the lowest column stands, and what is carried into it. */
  readonly from: number;
  readonly carriesFrom: number;
  /** What was right before in the line as it is read, if anything was. */
  readonly kept: KeptLine | undefined;
  readonly keptCarries: readonly (number | undefined)[] | undefined;
  /** So many digits made the whole line when it was right, and all still stand; null: it never was. */
  readonly ended: number | null;
  /** Highest column that holds a digit or a carry; −1: none. */
  readonly highest: number;
  /** Columns that are decimals of the whole product: their zeros at the end may be left out. */
  readonly decimals: number;
}

export interface Progress {
  /** Nothing more is to come: what is not there is missing. */
  readonly final: boolean;
  /** So many columns rest on work that is complete. */
  readonly ready: number;
}

/** Carries are sets of small numbers, bit c for a carry of c: more than one may be what the child had in mind. */
type Carries = number;
const NO_CARRY: Carries = 1;
/** More columns than any paper has. */
const MOST_COLUMNS = 40;

/** Goes from column to column, changed in place by `readColumn` and what it calls. */
interface Walk {
  /** What may be carried into the column, and what most likely is; a carry that is written decides. */
  into: Carries;
  likely: number;
  /** What the column has of itself, and what stands in it. */
  base: number;
  most: number;
  given: number | null;
  /** What its digit handed on when it was right; null: it never was. */
  before: Carries | null;
  /** The column below is written and judged, so what it hands on is known. */
  known: boolean;
  /** The digit just below is due and not written. */
  belowMissing: boolean;
  /** Nothing is written below. */
  nothingYet: boolean;
}

/** What a digit that was right when it was written handed on then; null: it was not, or was written over. */
export function stayed(
  kept: KeptLine | undefined,
  digits: readonly (number | undefined)[],
  at: number,
): number | null {
  const before = kept === undefined ? undefined : kept.digits[at];
  return before !== undefined && before.given === digits[at] ? before.hands : null;
}

function carryStayed(written: Written, column: number, noted: number): boolean {
  return written.keptCarries?.[written.carriesFrom + column] === noted;
}

/**
 * Reads the digits of a line from the lowest up, each with what the one before it hands on. `short`: only as far as
 * anything is written, but always the lowest.
 */
export function readColumns(
  columns: Columns,
  written: Written,
  progress: Progress,
  short: boolean,
): ColumnRead[] {
  const reads: ColumnRead[] = [];
  const walk: Walk = {
    into: NO_CARRY,
    likely: 0,
    base: 0,
    most: 0,
    given: null,
    before: null,
    known: true,
    belowMissing: false,
    nothingYet: true,
  };
  for (let column = 0; column < MOST_COLUMNS; column += 1) {
    if (column > written.highest) {
      if ((short && column > 0) || (column >= columns.list.length && walk.into === NO_CARRY)) break;
    }
    reads.push(readColumn(columns, column, written, progress, walk));
  }
  return reads;
}

function readColumn(
  columns: Columns,
  index: number,
  written: Written,
  { final, ready }: Progress,
  walk: Walk,
): ColumnRead {
  const column = columns.list[index] ?? beyond(columns, index);
  const at = written.from + index;
  const given = written.digits[at] ?? null;
  const noted = written.carries[written.carriesFrom + index];
  walk.base = column.base;
  walk.most = column.most;
  walk.given = given;
  walk.before = stayed(written.kept, written.digits, at);
  const known = walk.known || final;
  const carryDue = walk.likely;
  let carry: ColumnRead['carry'] = 'none';
  if (noted !== undefined) {
    if (has(walk.into, noted) || carryStayed(written, index, noted)) carry = 'right';
    else carry = known ? 'wrong' : 'waiting';
    walk.into = 1 << noted;
    walk.likely = noted;
  }
  const judged = final || (index < ready && (!columns.carrying || known || noted !== undefined));
  const due = (column.base + walk.likely) % 10;
  const mark = markOf(columns, index, judged, written, walk);
  handOn(walk, mark);
  walk.known = final || (judged && mark !== 'missing' && mark !== 'waiting');
  walk.belowMissing = mark === 'missing';
  walk.nothingYet &&= given === null;
  return { given, due, mark, carry, noted: noted ?? null, hands: walk.into, carryDue };
}

function markOf(
  columns: Columns,
  index: number,
  judged: boolean,
  written: Written,
  { into, likely, base, given, before, belowMissing, nothingYet }: Walk,
): Mark {
  if (given === null) {
    const ended = written.ended !== null && index >= written.ended;
    // Above a digit that is not there either, only what is due there counts.
    const nothing = belowMissing ? likely === 0 : has(into, 0);
    if (ended || (index >= columns.needed && nothing)) return 'absent';
    const mayBeZero = fitting(into, base, 0) !== 0;
    const mayLeaveOut = index < written.decimals && nothingYet;
    return mayLeaveOut && mayBeZero ? 'leftOut' : 'missing';
  }
  if (before !== null) return 'right';
  if (!judged) return 'waiting';
  return fitting(into, base, given) !== 0 ? 'right' : 'wrong';
}

/**
 * What the column may hand on: what its digit was made with, where it is due. After a wrong digit or none, what
 * the due value hands on (a slip of the pen) or any value that ends in that digit and that the column can have
 * (a misremembered fact).
 */
function handOn(walk: Walk, mark: Mark): void {
  const { into, likely, base, most, given } = walk;
  if (mark === 'absent') {
    walk.into = NO_CARRY;
    walk.likely = 0;
    return;
  }
  const before = walk.before ?? 0;
  const digit = mark === 'leftOut' ? 0 : given;
  const fits = digit === null ? 0 : fitting(into, base, digit);
  if (fits !== 0 && mark !== 'wrong') {
    const best = has(fits, likely) ? likely : lowest(fits);
    walk.into = tensWith(fits, base) | before;
    walk.likely = Math.floor((base + best) / 10);
    return;
  }
  walk.into = tensWith(into, base) | before | below(Math.floor((most - (digit ?? 0)) / 10));
  walk.likely = Math.floor((base + likely) / 10);
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
