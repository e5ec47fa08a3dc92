import { binds, type Constraints } from './constraints.ts';
import { digitsOf } from './digits.ts';
import { numbersIn, type Range, within } from './range.ts';
import type { RowCondition } from './row-machine.ts';
import { zerosAgree } from './zeros.ts';

/** Multipliers of one length, smallest first, that put the same conditions on a multiplicand. */
export interface MultiplierGroup {
  /** Equal names, equal conditions, whatever the length. */
  readonly name: string;
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
  const groups = new Map<string, { name: string; rows: RowCondition[]; members: number[] }>();
  for (let number = 10 ** (length - 1); number < 10 ** length; number++) {
    const digits = digitsOf(number);
    if (!zerosAgree(constraints.zeros.multiplier, digits)) continue;
    if (!zeroRowsAgree(constraints, digits)) continue;
    const used = constraints.coupled ? digitsByKind(kinds, digits) : [];
    const name = used.join();
    const group = groups.get(name);
    if (group) group.members.push(number);
    else groups.set(name, { name, rows: rowsOf(kinds, used), members: [number] });
  }
  return [...groups.values()].sort((a, b) => a.rows.length - b.rows.length);
}

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

/** A row of the digit 0 never exchanges. */
const zeroRowsAgree = ({ exchanges }: Constraints, digits: readonly number[]): boolean =>
  digits.every((digit, row) => digit > 0 || !exchanges[row] || within(0, exchanges[row]));

/** For each kind of row the digits in it, as bits 1 to 9; a row of the digit 0 asks for nothing. */
function digitsByKind(kinds: KindsOfRows, digits: readonly number[]): number[] {
  const used = kinds.conditions.map(() => 0);
  for (const [row, digit] of digits.entries()) {
    if (digit > 0) used[kinds.ofRow[row]!]! |= 1 << digit;
  }
  return used;
}

const DIGITS = numbersIn({ from: 1, to: 9 });

const rowsOf = ({ conditions }: KindsOfRows, used: readonly number[]): RowCondition[] =>
  used.flatMap((bits, kind) =>
    DIGITS.filter((digit) => bits & (1 << digit)).map((digit) => ({
      digit,
      exchanges: conditions[kind] ?? null,
    })),
  );
