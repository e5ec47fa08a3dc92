/** Digits of a whole number, units first: 934 → [4, 3, 9]. Exact below 2^53; 0 has one digit. */
export function digitsOf(number: number): number[] {
  const digits: number[] = [];
  let rest = number;
  do {
    digits.push(rest % 10);
    rest = Math.floor(rest / 10);
  } while (rest > 0);
  return digits;
}

/**
 * What each pile of one row holds before sliding, units square first: the multiplicand's digit times
 * the row's digit, and what the square to the right sends when its tens are exchanged.
 */
export function pilesOfRow(multiplicand: readonly number[], digit: number): number[] {
  let sent = 0;
  return multiplicand.map((laid) => {
    const pile = laid * digit + sent;
    sent = Math.floor(pile / 10);
    return pile;
  });
}

/** Squares of one row whose pile reaches ten. */
export const exchangesOfRow = (multiplicand: readonly number[], digit: number): number =>
  pilesOfRow(multiplicand, digit).filter((pile) => pile >= 10).length;
