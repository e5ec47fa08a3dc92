import type { Columns } from '../judge/paper/columns.ts';
import type { LineReading, LineSpec } from '../judge/paper/line-reading.ts';
import { holdsDigits, NO_LINE, rowLines } from '../judge/paper/lines.ts';
import type { Scene } from '../judge/scene.ts';
import type { Suggestion } from '../judge/work.ts';
import type { Line } from '../mat/action.ts';
import { digitOn, LINES, lineIndex, placesOn } from '../mat/sheet.ts';
import { beginLine, rubDigit, writeCarry, writeColumn, writeZero } from './captions.ts';

/** What a line is: of a row, or the product that is added up. */
export interface LineKind {
  readonly line: Line;
  readonly carries: Line | null;
  /** −1: the sum. */
  readonly row: number;
}

/** Touches the row's multiplier digit on the first free line; null: the row has its line. */
export function nextBegin(scene: Scene, row: number): Suggestion | null {
  const { plan, position } = scene;
  const lines = rowLines(scene);
  const { line, worked } = lines[row]!;
  if (line !== NO_LINE)
    return worked === row ? null : beginLine(plan, { do: 'begin', line: LINES[line]!, row });
  const all = [...plan.up.keys()];
  const free =
    all.find((each) => position.paper.begun[LINES[each]!] === undefined) ??
    all.find(
      (each) => !holdsDigits(position, each) && !lines.some((other) => other.line === each),
    ) ??
    all.find((each) => !holdsDigits(position, each));
  return free === undefined ? null : beginLine(plan, { do: 'begin', line: LINES[free]!, row });
}

/** The next digit of a line, its placeholders first, each carry before the digit that it feeds. */
export function nextInLine(scene: Scene, reading: LineReading, kind: LineKind): Suggestion | null {
  if (reading.shift > 0 || (reading.shift < 0 && reading.spec.lowest > 0)) {
    return nextUnshifted(scene, reading, kind) ?? nextCarryAway(scene, reading);
  }
  return nextPlaceholder(scene, reading, kind) ?? nextColumn(scene, reading, kind);
}

function digitAt({ position }: Scene, line: Line, at: number): number | undefined {
  return digitOn(position.paper, line, at);
}

function nextPlaceholder(
  scene: Scene,
  { spec }: LineReading,
  { line, row }: LineKind,
): Suggestion | null {
  const begun = holdsDigits(scene.position, lineIndex(line));
  for (let at = 0; at < spec.lowest; at += 1) {
    const digit = digitAt(scene, line, at);
    const later = begun && digitAt(scene, line, spec.lowest) !== undefined;
    if ((digit ?? 0) > 0 || (digit === undefined && !later && spec.columns.needed > 0)) {
      return writeZero(scene.plan, { line, row, at });
    }
  }
  return null;
}

function nextColumn(scene: Scene, reading: LineReading, kind: LineKind): Suggestion | null {
  const { spec, shift, carried, reads } = reading;
  const { line, carries } = kind;
  for (const [column, read] of reads.entries()) {
    const at = spec.lowest + column + shift;
    const over = spec.lowest + column + carried;
    const standing = spec.carries.find((each) => digitAt(scene, LINES[each]!, over) !== undefined);
    if (read.carry === 'wrong' && standing !== undefined) {
      return nextCarry(scene, LINES[standing]!, over, read.carryDue, kind);
    }
    const unheld = read.mark === 'leftOut' && !holdsDigits(scene.position, lineIndex(line));
    if (read.mark === 'missing' || unheld) {
      const remember = carries !== null && read.carryDue > 0 && read.noted === null;
      return remember && column < spec.columns.needed
        ? writeCarry(scene.plan, { line: carries, row: kind.row, at: over, digit: read.carryDue })
        : nextDigit(scene, spec, kind, { column, at, carry: read.noted ?? read.carryDue });
    }
    // A wrong carry that was crossed out since: the digit made with it is written again.
    if (read.carry === 'wrong')
      return nextDigit(scene, spec, kind, { column, at, carry: read.carryDue });
    if (read.mark !== 'wrong') continue;
    return nextDigit(scene, spec, kind, { column, at, carry: read.noted ?? read.carryDue });
  }
  return null;
}

/** The digit that is due with the carry; where none is due, what stands there is rubbed out. */
function nextDigit(
  { plan, position }: Scene,
  { columns }: LineSpec,
  kind: LineKind,
  { column, at, carry }: { column: number; at: number; carry: number },
): Suggestion {
  const base = columns.list[column]?.base ?? 0;
  const digit = (base + carry) % 10;
  const place = plan.problem.mat.origin + at;
  const surplus = digit === 0 && column >= columns.needed;
  return surplus && digitOn(position.paper, kind.line, at) !== undefined
    ? rubDigit({ do: 'rub', line: kind.line, place })
    : writeColumn(plan, { ...kind, column, base, carry, at, digit });
}

/** A wrong carry is written over, or rubbed out where nothing is carried. */
function nextCarry(
  { plan }: Scene,
  line: Line,
  at: number,
  due: number,
  { row }: LineKind,
): Suggestion {
  const place = plan.problem.mat.origin + at;
  return due === 0
    ? rubDigit({ do: 'rub', line, place })
    : writeCarry(plan, { line, row, at, digit: due });
}

/** A line that stands too far to one side is written again where it belongs, digit by digit. */
function nextUnshifted(scene: Scene, { spec }: LineReading, kind: LineKind): Suggestion | null {
  const due = plainDigits(spec.columns);
  const { line } = kind;
  const { origin } = scene.plan.problem.mat;
  const highest = placesOn(scene.position.paper, lineIndex(line)).at(-1) ?? -1;
  for (let at = 0; at <= Math.max(highest, spec.lowest + due.length - 1); at += 1) {
    const column = at - spec.lowest;
    const digit = digitAt(scene, line, at);
    const wanted = column < 0 ? 0 : due[column];
    if (digit === wanted || (digit === undefined && column < 0)) continue;
    if (wanted === undefined) {
      if (digit === undefined || digit === 0) continue;
      return rubDigit({ do: 'rub', line, place: origin + at });
    }
    if (column < 0) return writeZero(scene.plan, { line, row: kind.row, at });
    const base = spec.columns.list[column]?.base ?? 0;
    return writeColumn(scene.plan, { ...kind, column, base, carry: 0, at, digit: wanted });
  }
  return null;
}

/** Carries that still make a line read as shifted are in the way. */
function nextCarryAway({ plan, position }: Scene, { spec }: LineReading): Suggestion | null {
  for (const line of spec.carries) {
    const [at] = placesOn(position.paper, line);
    if (at !== undefined)
      return rubDigit({ do: 'rub', line: LINES[line]!, place: plan.problem.mat.origin + at });
  }
  return null;
}

/** The digits of a line with everything carried in the head. */
function plainDigits({ list, needed }: Columns): number[] {
  const digits: number[] = [];
  let carry = 0;
  for (let column = 0; column < needed || carry > 0; column += 1) {
    const value = (list[column]?.base ?? 0) + carry;
    digits.push(value % 10);
    carry = Math.floor(value / 10);
  }
  return digits;
}
