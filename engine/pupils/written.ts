import { type AddAt, type Beliefs, believed, type Column, type ColumnAt } from './beliefs.ts';

/** The small figure that stands over a column, if one was noted there. */
export type Noted = (at: number) => number | undefined;

/** Digits written, lowest first; what was noted, by the digit's index that it stands over. */
export interface LineWork {
  readonly digits: readonly number[];
  readonly notes: readonly { readonly at: number; readonly digit: number }[];
  /** By column: what was handed on, whether noted or kept in the head. */
  readonly handed: readonly number[];
}

export interface RowAt {
  readonly across: readonly number[];
  readonly up: readonly number[];
  readonly row: number;
  readonly earlier: readonly number[];
}

const NOTHING_NOTED: Noted = () => undefined;

/** The digits of a whole amount, lowest first. */
export function digitsOfAmount(amount: number): number[] {
  return [...String(amount)].reverse().map(Number);
}

/** A column done the right way: its units stay, its tens go on; the last column stands whole. */
export function handedOn(value: number, last: boolean): Column {
  return last
    ? { writes: digitsOfAmount(value), carry: 0 }
    : { writes: [value % 10], carry: Math.floor(value / 10) };
}

/** A row of the written algorithm, above its empty places. */
export function workRow(beliefs: Beliefs, at: RowAt, noted: Noted = NOTHING_NOTED): LineWork {
  const { across, up, row, earlier } = at;
  return workColumns(across.length, noted, (column, coming) => {
    const a = across[column]!;
    const b = believed(beliefs, 'partner', { row, column, across, up }, up[row] ?? 0);
    const fact = believed(beliefs, 'fact', { a, b }, a * b);
    const last = column === across.length - 1;
    const seen: ColumnAt = { a, b, fact, column, last, row, across, earlier, ...coming };
    const right = handedOn(fact + coming.carry + (last ? 10 * coming.beyond : 0), last);
    return believed(beliefs, 'column', seen, right);
  });
}

export interface AddendsAt {
  readonly digits: readonly (number | null)[];
  readonly notes: readonly number[];
}

/** The sum of columns; the right way hands on and writes the last sum whole. */
export function workSum(
  beliefs: Beliefs,
  columns: readonly AddendsAt[],
  noted: Noted = NOTHING_NOTED,
): LineWork {
  return workColumns(columns.length, noted, (column, { carry, beyond }) => {
    const last = column === columns.length - 1;
    const { digits, notes } = columns[column]!;
    const sum = digits.reduce<number>((total, digit) => total + (digit ?? 0), carry);
    const seen: AddAt = { digits, notes, carry, column, last };
    return believed(beliefs, 'add', seen, handedOn(sum + (last ? 10 * beyond : 0), last));
  });
}

interface Coming {
  readonly carry: number;
  readonly beyond: number;
  readonly handed: readonly number[];
}

function workColumns(
  count: number,
  noted: Noted,
  make: (column: number, coming: Coming) => Column,
): LineWork {
  const digits: number[] = [];
  const notes: { at: number; digit: number }[] = [];
  const handed: number[] = [];
  const coming: number[] = [];
  for (let column = 0; column < count; column += 1) {
    const carry = (column > 0 ? noted(digits.length) : undefined) ?? coming[column] ?? 0;
    const made = make(column, { carry, beyond: coming[count] ?? 0, handed });
    digits.push(...made.writes);
    handed.push(made.carry);
    if (made.carry === 0) continue;
    const feeds = made.feeds ?? 1;
    coming[column + feeds] = (coming[column + feeds] ?? 0) + made.carry;
    const at = digits.length + feeds - 1;
    if (column + feeds < count && made.carry < 10) notes.push({ at, digit: made.carry });
  }
  return { digits, notes, handed };
}
