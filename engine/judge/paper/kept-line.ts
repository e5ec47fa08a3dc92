import { blank, type Digits, MOST_PLACES } from '../../mat/sheet.ts';
import { withPaper } from '../changes.ts';
import { added, placed } from '../ledger.ts';
import type { Ledger, Scene } from '../scene.ts';
import type { Columns } from './columns.ts';
import type { ColumnRead, KeptDigit, KeptLine, LineReading, LineSpec } from './line-reading.ts';

/** What a digit that was right when it was written handed on then; null: it was not, or was written over. */
export function stayed(kept: KeptLine | undefined, at: number, given: number): number | null {
  const before = kept === undefined ? undefined : digitKept(kept, at);
  return before !== undefined && before.given === given ? before.hands : null;
}

export function carryStayed(
  kept: KeptLine | undefined,
  carried: number,
  at: number,
  noted: number,
): boolean {
  return kept !== undefined && carryKept(kept, carried, at) === noted;
}

function digitKept({ reading, digits }: KeptLine, at: number): KeptDigit | undefined {
  const column = at - reading.spec.lowest - reading.shift;
  const read = column < 0 ? undefined : reading.reads[column];
  return read !== undefined && hasRightDigit(read) ? read : digits[at];
}

function carryKept({ reading, carries }: KeptLine, carried: number, at: number) {
  const column = reading.carried === carried ? at - reading.spec.lowest - carried : -1;
  const read = column < 0 ? undefined : reading.reads[column];
  return read?.carry === 'right' ? read.noted : carriesAt(carries, carried)[at];
}

const NO_DIGITS: readonly undefined[] = [];
const NO_CARRIES: KeptLine['carries'] = [];

function carriesAt(carries: KeptLine['carries'], carried: number): Digits {
  return carries.find(({ by }) => by === carried)?.carries ?? NO_DIGITS;
}

function hasRightDigit({ mark, given, carry }: ColumnRead): boolean {
  return mark === 'right' && carry !== 'wrong' && given !== null;
}

/** What reads right now stays right, whatever is written elsewhere later. */
export function withLatches(scene: Scene, reading: LineReading): Ledger {
  const { ledger } = scene;
  const kept = keptLines(scene, reading.spec);
  const before = keptIn(kept, wayOf(reading.spec, reading.shift));
  if (before !== undefined && before.reading === reading) return ledger;
  const after = keptOf(reading, before);
  if (after === undefined || after === before) return ledger;
  const more = added(before === undefined ? kept : without(kept, before), after);
  if (reading.spec.row < 0) return withPaper(ledger, { sumLine: more });
  return withPaper(ledger, { lines: placed(ledger.onPaper.lines, reading.spec.row, more) });
}

function without(all: readonly KeptLine[], one: KeptLine): readonly KeptLine[] {
  return all.length === 1 ? NONE : all.filter((each) => each !== one);
}

const NONE: readonly KeptLine[] = [];

/**
 * Whether a line reads as it did now that what was right in it is remembered: each digit and carry that was right is
 * so again and hands on the same; only a whole line of before that stands again would read on otherwise, and other
 * columns of the ways in which it may be read (`first`: those of the first of them), or other places of the carries over
 * a shifted line, might now fit as well.
 */
export function isSteady(
  lines: readonly KeptLine[],
  { spec, shift, written, faults }: LineReading,
  first: Columns,
  ways: number,
): boolean {
  if (shift !== 0 || (ways > 1 && (spec.columns !== first || faults.length > 0))) return false;
  const kept = keptIn(lines, wayOf(spec, shift));
  return endedIn(kept, written.digits, spec.lowest) === kept?.ended;
}

/** So many digits made the whole line when it was right, if all of them still stand. */
export function endedIn(kept: KeptLine | undefined, digits: Digits, from: number): number | null {
  if (kept === undefined || kept.end === 0) return null;
  for (let at = from; at < from + kept.end; at += 1) {
    const given = digits[at];
    if (given === undefined || stayed(kept, at, given) === null) return null;
  }
  return kept.end;
}

/** What was right in the line as it is read this way. */
export function keptIn(lines: readonly KeptLine[], way: string): KeptLine | undefined {
  for (let index = 0; index < lines.length; index += 1) {
    if (lines[index]!.way === way) return lines[index];
  }
  return undefined;
}

export function keptLines({ ledger }: Scene, { row }: LineSpec): readonly KeptLine[] {
  return (row < 0 ? ledger.onPaper.sumLine : ledger.onPaper.lines[row]) ?? NONE;
}

/** What was right at one shift is not so at another. */
export function wayOf({ name }: LineSpec, shift: number): string {
  return shift === 0 ? name : `${name}@${shift}`;
}

/** With what is right in this reading; without anything more, what was kept before. */
function keptOf(reading: LineReading, before: KeptLine | undefined): KeptLine | undefined {
  const whole = endOf(reading);
  const end = whole ?? before?.end ?? 0;
  if (!hasMore(reading, before) && end === (before?.end ?? 0)) return before;
  const way = wayOf(reading.spec, reading.shift);
  // Above a whole line nothing is due, whether or not it was whole before.
  const ended = whole ?? reading.written.ended;
  if (before === undefined)
    return { way, reading, digits: NO_DIGITS, carries: NO_CARRIES, end, ended };
  const { digits, carries } = isOverwritten(before.reading, reading) ? allKept(before) : before;
  return { way, reading, digits, carries, end, ended };
}

/** Whether something is right in the reading that was not kept yet. */
function hasMore(
  { spec, shift, carried, reads }: LineReading,
  before: KeptLine | undefined,
): boolean {
  for (let column = 0; column < reads.length; column += 1) {
    const read = reads[column]!;
    if (read === before?.reading.reads[column]) continue;
    const { given, hands, carry, noted } = read;
    if (hasRightDigit(read)) {
      const known = before && digitKept(before, spec.lowest + column + shift);
      if (known === undefined || known.given !== given || known.hands !== hands) return true;
    }
    const over = spec.lowest + column + carried;
    if (carry === 'right' && !carryStayed(before, carried, over, noted!)) return true;
  }
  return false;
}

/** Whether something that was right in the earlier reading is not so in the later one. */
function isOverwritten(earlier: LineReading, later: LineReading): boolean {
  if (earlier.carried !== later.carried) return true;
  for (let column = 0; column < earlier.reads.length; column += 1) {
    const read = earlier.reads[column]!;
    if (read === later.reads[column]) continue;
    if (hasRightDigit(read) || read.carry === 'right') return true;
  }
  return false;
}

/** Everything that was right so far, written out by place. */
function allKept({ reading, digits, carries }: KeptLine): Pick<KeptLine, 'digits' | 'carries'> {
  const { spec, shift, carried, reads } = reading;
  const all = copied(digits);
  const over = copied(carriesAt(carries, carried));
  for (let column = 0; column < reads.length; column += 1) {
    const read = reads[column]!;
    if (hasRightDigit(read)) all[spec.lowest + column + shift] = read;
    if (read.carry === 'right') over[spec.lowest + column + carried] = read.noted!;
  }
  const others = carries.filter(({ by }) => by !== carried);
  return { digits: all, carries: [...others, { by: carried, carries: over }] };
}

/** With room for every place on paper. */
function copied<T>(list: readonly (T | undefined)[]): (T | undefined)[] {
  return list.length > 0 ? list.slice() : blank(MOST_PLACES);
}

/** How many digits make the whole line, all of them right; null: it is not whole. */
function endOf({ spec, reads, short }: LineReading): number | null {
  if (short) return null;
  let digits = 0;
  while (reads[digits]?.mark === 'right') digits += 1;
  if (digits === 0 || digits < spec.columns.needed) return null;
  for (let above = digits; above < reads.length; above += 1) {
    if (reads[above]!.mark !== 'absent') return null;
  }
  return hasNoCarry(reads[digits - 1]) ? digits : null;
}

function hasNoCarry(last: ColumnRead | undefined): boolean {
  return last !== undefined && (last.hands & 1) === 1;
}
