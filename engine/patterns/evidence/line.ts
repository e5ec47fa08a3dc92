import type { LineWork } from '../../pupils/written.ts';
import { DIGITS, type Expectation } from './evidence.ts';
import { type PlaceDigits, topOf } from './first-written.ts';

/** A line as the child wrote it: `top` is its highest place, −1 if there is none. */
export function lineSeen(line: Omit<LineSeen, 'top'>): LineSeen {
  const names: string[] = [];
  const stepAt = (at: number) => {
    names[at] ??= line.stepAt(at);
    return names[at];
  };
  return { ...line, top: topOf(line.digits), stepAt };
}

/** A line as the child wrote it, and how its places are named. */
export interface LineSeen {
  readonly digits: PlaceDigits;
  readonly notes: PlaceDigits;
  /** Whether all of it should be there. */
  readonly over: boolean;
  readonly top: number;
  readonly stepAt: (at: number) => string;
}

/** Keys of the small figures come after those of the digits. */
const NOTE = 30;

/** Leading zeros may be written or not. */
function significant(digits: readonly number[]): number {
  let length = digits.length;
  while (length > 1 && digits[length - 1] === 0) length -= 1;
  return length;
}

/** Place by place: the digit that was due under the beliefs, and the small figures where any were noted. */
export function expectLine(seen: LineSeen, made: LineWork, shift: number): Expectation[] {
  const found: Expectation[] = [];
  const length = significant(made.digits);
  const most = Math.max(seen.top, shift + length - 1);
  for (let at = 0; at <= most; at += 1) {
    const given = seen.digits.get(at) ?? null;
    const expected = at < shift ? 0 : at < shift + length ? made.digits[at - shift]! : null;
    const blank = (at < shift || expected === null) && (given ?? 0) === 0;
    if (given === null && (!seen.over || blank)) continue;
    const step = seen.stepAt(at);
    found.push(
      blank
        ? { key: at, step, given: 0, expected: 0, among: DIGITS }
        : { key: at, step, given, expected, among: DIGITS },
    );
  }
  for (const [at, given] of seen.notes) {
    const expected = made.notes.find((note) => note.at + shift === at)?.digit ?? null;
    found.push({ key: NOTE + at, step: seen.stepAt(at), given, expected, among: DIGITS });
  }
  return found;
}
