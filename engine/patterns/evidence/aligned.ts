import type { LineWork } from '../../pupils/written.ts';
import { isSameList } from '../by-list.ts';
import { type Expectation, type Group, ROOM } from './evidence.ts';
import type { PlaceDigits } from './first-done.ts';
import { expectLine, type LineSeen, type StepAt, wrongIn } from './line.ts';

/** Further than any row is moved by a belief. */
const MOST_SHIFT = 5;
export const SHIFT_KEY = ROOM - 1;

export interface AlignedLine {
  readonly seen: LineSeen;
  readonly row: number;
  readonly origin: number;
  /** Empty places that the beliefs leave below a row of so many digits. */
  readonly due: (length: number) => number;
  /** The row's digits if it begins after so many empty places: asked for more than once. */
  readonly made: (shift: number) => LineWork;
}

export interface Aligned {
  readonly made: LineWork;
  readonly shift: number;
  readonly due: number;
  readonly group: Group;
}

/** Steps of a row: the zeros that it begins with, then its digits. */
export function stepsOfRow(row: number, origin: number): StepAt {
  return (at) => (at < row ? `zero:${row}:${at}` : `row:${row}:${origin + at}`);
}

/**
 * A zero at the end may be a placeholder or a digit: the row is read where it disagrees least.
 * `usual`: the row as the right way has it; beliefs that make the same of it leave it so.
 */
export function readAligned(line: AlignedLine, usual: Aligned | null): Aligned {
  if (usual !== null && isAsUsual(line, line.made(usual.shift), usual)) return usual;
  let best: Omit<Aligned, 'group'> | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const shift of shiftsOf(line)) {
    const made = line.made(shift);
    const due = line.due(made.digits.length);
    const wrong = wrongIn(line.seen, made, shift) + (shift === due ? 0 : 1);
    if (wrong >= least) continue;
    least = wrong;
    best = { made, shift, due };
    if (wrong === 0) break;
  }
  const { made, shift, due } = best!;
  return { made, shift, due, group: expectAt(line, best!) };
}

function expectAt(
  { seen, row, origin }: AlignedLine,
  { made, shift, due }: Omit<Aligned, 'group'>,
): Expectation[] {
  const group = expectLine(seen, made, shift, stepsOfRow(row, origin));
  const step = row === 0 ? `row:0:${origin}` : `zero:${row}:${Math.min(shift, row - 1)}`;
  group.push({ key: SHIFT_KEY, step, given: shift, expected: due, among: MOST_SHIFT + 1 });
  return group;
}

function isAsUsual(line: AlignedLine, made: LineWork, usual: Aligned): boolean {
  return isSameLine(made, usual.made) && line.due(made.digits.length) === usual.due;
}

function isSameLine(one: LineWork, other: LineWork): boolean {
  if (one === other) return true;
  return (
    isSameList(one.digits, other.digits) &&
    isSameList(one.handed, other.handed) &&
    one.notes.length === other.notes.length &&
    one.notes.every(({ at, digit }, index) => {
      const note = other.notes[index]!;
      return note.at === at && note.digit === digit;
    })
  );
}

/** Where the row's own digits may begin: after some of its lowest zeros, or where it is due. */
function shiftsOf(line: AlignedLine): readonly number[] {
  const { digits } = line.seen;
  const lowest = lowestOf(digits);
  const shifts = [lowest];
  for (let next = lowest; next < MOST_SHIFT && digits[next] === 0; next += 1) {
    shifts.push(next + 1);
  }
  const meant = line.due(line.made(lowest).digits.length);
  if (!shifts.includes(meant)) shifts.push(meant);
  return shifts;
}

function lowestOf(digits: PlaceDigits): number {
  let lowest = 0;
  while (lowest < MOST_SHIFT && digits[lowest] === undefined) lowest += 1;
  return lowest;
}
