import { binds, type Constraints } from './constraints.ts';
import { DEAD } from './digit-machine.ts';
import { numbersIn, type Range, within } from './range.ts';
import type { RowCondition } from './row-machine.ts';
import { zeroMachine } from './zeros.ts';

/** Multipliers of one length, in no order, that put the same conditions on a multiplicand. */
export interface MultiplierGroup {
  /** Equal names, equal conditions, whatever the length. */
  readonly name: number;
  /** The different rows that these multipliers make; none when nothing ties the numbers together. */
  readonly rows: readonly RowCondition[];
  readonly members: readonly number[];
}

/**
 * What a multiplicand has to satisfy depends only on which digits stand in rows with which condition:
 * not on their order, nor on how often one comes. So 900 multipliers fall into far fewer groups.
 */
export function multiplierGroups(constraints: Constraints, length: number): MultiplierGroup[] {
  const kinds = kindsOfRows(constraints);
  const zeros = zeroMachine(constraints.zeros.multiplier);
  const members = new Map<number, number[]>();
  const add = (name: number, number: number): void => {
    const known = members.get(name);
    if (known) known.push(number);
    else members.set(name, [number]);
  };
  const extend = (row: number, number: number, name: number, state: number): void => {
    if (row === length) {
      if (zeros.accepts(state)) add(constraints.coupled ? name : 0, number);
      return;
    }
    for (let digit = row === length - 1 ? 1 : 0; digit < 10; digit++) {
      const next = zeros.step(state, digit);
      if (next === DEAD || (digit === 0 && !mayBeZero(constraints, row))) continue;
      extend(row + 1, number + digit * 10 ** row, withDigit(name, kinds.ofRow[row]!, digit), next);
    }
  };
  extend(0, 0, 0, zeros.start);
  return [...members]
    .map(([name, numbers]) => ({ name, rows: rowsOf(kinds, name), members: numbers }))
    .sort((one, other) => one.rows.length - other.rows.length);
}

/** A row of the digit 0 never exchanges. */
const mayBeZero = ({ exchanges }: Constraints, row: number): boolean =>
  !exchanges[row] || within(0, exchanges[row]);

/**
 * A group's name has nine bits for each kind of row: which digits stand there. At most four kinds occur
 * (three listed rows and the rest), so a name stays below 2^36. A digit 0 asks for nothing.
 */
function withDigit(name: number, kind: number, digit: number): number {
  const unit = 512 ** kind * 2 ** (digit - 1);
  return digit === 0 || Math.floor(name / unit) % 2 === 1 ? name : name + unit;
}

const rowsOf = ({ conditions }: KindsOfRows, name: number): RowCondition[] =>
  conditions.flatMap((exchanges, kind) =>
    DIGITS.filter((digit) => withDigit(name, kind, digit) === name).map((digit) => ({
      digit,
      exchanges,
    })),
  );

const DIGITS = numbersIn({ from: 1, to: 9 });

/** Rows with the same condition are of one kind. */
interface KindsOfRows {
  readonly ofRow: readonly number[];
  readonly conditions: readonly (Range | null)[];
}

function kindsOfRows({ exchanges }: Constraints): KindsOfRows {
  const conditions: (Range | null)[] = [];
  const ofRow = exchanges.map((range) => {
    const bound = binds(range) ? range : null;
    const found = conditions.findIndex((known) => sameRange(known, bound));
    return found >= 0 ? found : conditions.push(bound) - 1;
  });
  return { ofRow, conditions };
}

const sameRange = (one: Range | null, other: Range | null): boolean =>
  one?.from === other?.from && one?.to === other?.to;
