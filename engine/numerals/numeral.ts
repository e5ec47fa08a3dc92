import { fail, ok, type Result } from '../result.ts';

/**
 * A number as it is laid: every digit from the first that is not zero to the last one written.
 * `digits[0]` is the lowest and stands at place `lowest` (0 for a whole number, −2 for hundredths).
 * No digits at all: a problem without numbers.
 */
export interface Numeral {
  readonly text: string;
  readonly digits: readonly number[];
  readonly lowest: number;
}

export const NO_NUMERAL: Numeral = { text: '', digits: [], lowest: 0 };

const WRITTEN = /^\d+(\.\d+)?$/;
/** Longer than any mat holds, and short enough that no input can keep the engine busy. */
const LONGEST = 40;

export function parseNumeral(written: unknown, at: string): Result<Numeral> {
  if (typeof written !== 'string') return fail('notText', at);
  if (written.length > LONGEST) return fail('tooLong', at, { most: LONGEST });
  if (!WRITTEN.test(written)) return fail('notANumber', at);
  const [whole = '', decimals = ''] = written.split('.');
  const digits = trimLeading([...(whole + decimals)].reverse().map(Number));
  const lowest = decimals === '' ? 0 : -decimals.length;
  return ok({ text: textOf(digits, lowest), digits, lowest });
}

function trimLeading(digits: number[]): number[] {
  let length = digits.length;
  while (length > 1 && digits[length - 1] === 0) length -= 1;
  return digits.slice(0, length);
}

/** As a child writes it, with every digit after the point: `textOf([5, 2], -1)` is "2.5". */
export function textOf(digits: readonly number[], lowest: number): string {
  return placed([...digits].reverse().join(''), lowest);
}

/** Digits as they are written, the last of them at this place. */
function placed(digits: string, lowest: number): string {
  const places = Math.max(0, -lowest);
  const written = digits.padStart(places + 1, '0') + '0'.repeat(Math.max(0, lowest));
  if (places === 0) return written;
  return `${written.slice(0, -places)}.${written.slice(-places)}`;
}

/** The value `amount` × 10^lowest as text, without zeros at the end of its decimals. */
export function amountText(amount: bigint, lowest: number): string {
  if (amount < 0n) return `-${amountText(-amount, lowest)}`;
  const text = placed(amount.toString(), lowest);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

export function amountOf(numeral: Numeral): bigint {
  return BigInt([...numeral.digits].reverse().join('') || '0');
}

/** Digits of an amount, lowest first; zero has one digit. */
export function digitsOf(amount: bigint): number[] {
  return [...amount.toString()].reverse().map(Number);
}
