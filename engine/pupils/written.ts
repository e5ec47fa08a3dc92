import type { Beliefs, Column } from './beliefs.ts';

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
  readonly earlier: () => readonly number[];
}

const NOTHING_NOTED: Noted = () => undefined;

/** The digits of a whole amount, lowest first. */
export function digitsOfAmount(amount: number): number[] {
  const digits = [amount % 10];
  for (let rest = Math.floor(amount / 10); rest > 0; rest = Math.floor(rest / 10)) {
    digits.push(rest % 10);
  }
  return digits;
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
  const own = up[row] ?? 0;
  return workColumns(across.length, noted, (column, carry, beyond, handed) => {
    const a = across[column]!;
    const b = beliefs.partner?.({ row, column, across, up }, own) ?? own;
    const fact = beliefs.fact?.({ a, b }, a * b) ?? a * b;
    const last = column === across.length - 1;
    const right = handedOn(fact + carry + (last ? 10 * beyond : 0), last);
    if (beliefs.column === undefined) return right;
    const seen = { a, b, fact, column, last, row, across, earlier, carry, beyond, handed };
    return beliefs.column(seen, right);
  });
}

export interface AddendsAt {
  readonly digits: readonly (number | null)[];
  readonly notes: readonly number[];
}

/** The sum of columns, a 0 where there are none; the right way hands on and writes the last sum whole. */
export function workSum(
  beliefs: Beliefs,
  columns: readonly AddendsAt[],
  noted: Noted = NOTHING_NOTED,
): LineWork {
  const made = workColumns(columns.length, noted, (column, carry, beyond) => {
    const last = column === columns.length - 1;
    const { digits, notes } = columns[column]!;
    const sum = digits.reduce<number>((total, digit) => total + (digit ?? 0), carry);
    const right = handedOn(sum + (last ? 10 * beyond : 0), last);
    return beliefs.add?.({ digits, notes, carry, column, last }, right) ?? right;
  });
  return made.digits.length === 0 ? { digits: [0], notes: made.notes, handed: made.handed } : made;
}

/** One column, from what was handed on to it, to columns beyond the last one, and by those before. */
type Make = (column: number, carry: number, beyond: number, handed: readonly number[]) => Column;

function workColumns(count: number, noted: Noted, make: Make): LineWork {
  const digits: number[] = [];
  const notes: { at: number; digit: number }[] = [];
  const handed: number[] = [];
  const coming: number[] = new Array(count + 3).fill(0);
  for (let column = 0; column < count; column += 1) {
    const carry = (column > 0 ? noted(digits.length) : undefined) ?? coming[column]!;
    const { writes, carry: made, feeds = 1 } = make(column, carry, coming[count]!, handed);
    for (const digit of writes) digits.push(digit);
    handed.push(made);
    if (made === 0) continue;
    coming[column + feeds]! += made;
    const at = digits.length + feeds - 1;
    if (column + feeds < count && made < 10) notes.push({ at, digit: made });
  }
  return { digits, notes, handed };
}
