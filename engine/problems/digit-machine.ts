/**
 * Reads a number digit by digit, units first, and says at the end whether it is wanted. States are
 * small whole numbers below `radix`; `step` answers DEAD when no further digit can help.
 */
export interface DigitMachine {
  readonly start: number;
  readonly radix: number;
  step(state: number, digit: number): number;
  accepts(state: number): boolean;
}

export const DEAD = -1;
