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

export const digitCount = (number: number): number => String(number).length;

/** 314 with 2 places → "3.14"; 8 with 5 places → "0.00008". Trailing zeros stay: they are digits. */
export function withPoint(number: number, places: number): string {
  if (places === 0) return String(number);
  const padded = String(number).padStart(places + 1, '0');
  return `${padded.slice(0, -places)}.${padded.slice(-places)}`;
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
