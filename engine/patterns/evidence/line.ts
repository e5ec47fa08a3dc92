import type { LineWork } from '../../pupils/written.ts';
import { BLANK } from '../by-list.ts';
import { DIGITS, type Expectation } from './evidence.ts';
import type { FirstOnLine, PlaceDigits } from './first-done.ts';

/** A line as the child wrote it. */
export interface LineSeen {
  readonly digits: PlaceDigits;
  readonly notes: FirstOnLine;
  /** Whether all of it should be there. */
  readonly over: boolean;
  /** Names of its steps by place, as far as they were asked for. */
  readonly names: string[];
}

export function lineSeen(digits: PlaceDigits, notes: FirstOnLine, over: boolean): LineSeen {
  return { digits, notes, over, names: [] };
}

/** Spells the line out, how long each of its parts is first. */
export function spellLine(key: number[], { digits, notes, over }: LineSeen): void {
  key.push(over ? 1 : 0);
  spellNotes(key, notes);
  spellPlaces(key, digits);
}

export function spellNotes(key: number[], { digits, places }: FirstOnLine): void {
  key.push(places.length);
  for (const at of places) key.push(at, digits[at]!);
}

export function spellPlaces(key: number[], digits: readonly (number | null | undefined)[]): void {
  key.push(digits.length);
  for (let at = 0; at < digits.length; at += 1) key.push(digits[at] ?? BLANK);
}

/** The name of the step at a place. */
export type StepAt = (at: number) => string;

/** Keys of the small figures come after those of the digits. */
const NOTE = 30;

/** Leading zeros may be written or not. */
function significant(digits: readonly number[]): number {
  let length = digits.length;
  while (length > 1 && digits[length - 1] === 0) length -= 1;
  return length;
}

/** Takes in one place of a line, or the small figure over it. */
type Take = (key: number, at: number, given: number | null, expected: number | null) => void;

/** Place by place: the digit that was due under the beliefs, and the small figures where any were noted. */
function goAlong(seen: LineSeen, { digits, notes }: LineWork, shift: number, take: Take): void {
  const length = significant(digits);
  const all = Math.max(seen.digits.length, shift + length);
  for (let at = 0; at < all; at += 1) {
    const given = seen.digits[at] ?? null;
    const expected = at < shift ? 0 : at < shift + length ? digits[at - shift]! : null;
    const blank = (at < shift || expected === null) && (given ?? 0) === 0;
    if (given === null && (!seen.over || blank)) continue;
    if (blank) take(at, at, 0, 0);
    else take(at, at, given, expected);
  }
  for (const at of seen.notes.places) {
    const meant = notes.find((note) => note.at + shift === at);
    take(NOTE + at, at, seen.notes.digits[at]!, meant?.digit ?? null);
  }
}

export function expectLine(
  seen: LineSeen,
  made: LineWork,
  shift: number,
  stepAt: StepAt,
): Expectation[] {
  const found: Expectation[] = [];
  goAlong(seen, made, shift, (key, at, given, expected) => {
    seen.names[at] ??= stepAt(at);
    found.push({ key, step: seen.names[at], given, expected, among: DIGITS });
  });
  return found;
}

/** In how many places the line disagrees. */
export function wrongIn(seen: LineSeen, made: LineWork, shift: number): number {
  let wrong = 0;
  goAlong(seen, made, shift, (_key, _at, given, expected) => {
    if (given !== expected) wrong += 1;
  });
  return wrong;
}
