import { DEAD, type DigitMachine } from './digit-machine.ts';

/** Where a number has zeros: true must, false must not, null may. `some`: one at least, anywhere. */
export interface ZeroCondition {
  /** A zero with another digit on both sides that is not zero, at whatever distance. */
  readonly inside: boolean | null;
  /** The last digit written is a zero. */
  readonly atTheEnd: boolean | null;
  readonly some: boolean;
}

export const ANY_ZEROS: ZeroCondition = { inside: null, atTheEnd: null, some: false };

export const isFree = (zeros: ZeroCondition): boolean =>
  zeros.inside === null && zeros.atTheEnd === null && !zeros.some;

const NONZERO_SEEN = 1;
const AT_THE_END = 2;
const INSIDE = 4;

function read(state: number, digit: number): number {
  if (digit > 0) return state | NONZERO_SEEN;
  return state | (state & NONZERO_SEEN ? INSIDE : AT_THE_END);
}

const agrees = (wanted: boolean | null, found: boolean): boolean =>
  wanted === null || wanted === found;

const forbidden = (zeros: ZeroCondition, state: number): boolean =>
  (zeros.inside === false && (state & INSIDE) > 0) ||
  (zeros.atTheEnd === false && (state & AT_THE_END) > 0);

const accepted = (zeros: ZeroCondition, state: number): boolean =>
  agrees(zeros.inside, (state & INSIDE) > 0) &&
  agrees(zeros.atTheEnd, (state & AT_THE_END) > 0) &&
  (!zeros.some || (state & (INSIDE | AT_THE_END)) > 0);

/** Whether a number, given by its digits, units first, has its zeros where they are wanted. */
export const zerosAgree = (zeros: ZeroCondition, digits: readonly number[]): boolean =>
  accepted(zeros, digits.reduce(read, 0));

export const zeroMachine = (zeros: ZeroCondition): DigitMachine => ({
  start: 0,
  radix: 8,
  step: (state, digit) => {
    const next = read(state, digit);
    return forbidden(zeros, next) ? DEAD : next;
  },
  accepts: (state) => accepted(zeros, state),
});
