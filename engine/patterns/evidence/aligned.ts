import type { LineWork } from '../../pupils/written.ts';
import type { Expectation } from './evidence.ts';
import type { PlaceDigits } from './first-written.ts';
import { expectLine, type LineSeen } from './line.ts';

/** Further than any row is moved by a belief. */
const MOST_SHIFT = 5;

export interface AlignedLine {
  readonly seen: LineSeen;
  readonly row: number;
  readonly origin: number;
  /** Empty places that the beliefs leave below a row of so many digits. */
  readonly due: (length: number) => number;
  /** The row's digits if it begins after so many empty places. */
  readonly made: (shift: number) => LineWork;
}

export interface Aligned {
  readonly made: LineWork;
  readonly shift: number;
  readonly expectations: readonly Expectation[];
}

/** A zero at the end may be a placeholder or a digit: the row is read where it disagrees least. */
export function readAligned(line: AlignedLine): Aligned {
  let best: Aligned | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const shift of shiftsOf(line)) {
    const made = line.made(shift);
    const expectations = [
      ...expectLine(line.seen, made, shift),
      {
        key: `shift:${line.row}`,
        step: stepOfShift(line, shift),
        given: shift,
        expected: line.due(made.digits.length),
        among: MOST_SHIFT + 1,
      },
    ];
    const wrong = expectations.filter((each) => each.given !== each.expected).length;
    if (wrong >= least) continue;
    least = wrong;
    best = { made, shift, expectations };
  }
  return best!;
}

function stepOfShift({ row, origin }: AlignedLine, shift: number): string {
  return row === 0 ? `row:0:${origin}` : `zero:${row}:${Math.min(shift, row - 1)}`;
}

/** Where the row's own digits may begin: after some of its lowest zeros, or where it is due. */
function shiftsOf({ seen, made, due }: AlignedLine): Set<number> {
  const lowest = lowestOf(seen.digits);
  const shifts = new Set([lowest]);
  for (let next = lowest; next < MOST_SHIFT && seen.digits.get(next) === 0; next += 1) {
    shifts.add(next + 1);
  }
  return shifts.add(due(made(lowest).digits.length));
}

function lowestOf(digits: PlaceDigits): number {
  let lowest = 0;
  while (lowest < MOST_SHIFT && !digits.has(lowest)) lowest += 1;
  return lowest;
}
