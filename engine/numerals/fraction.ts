/** An exact, reduced fraction; `den` is positive. */
export interface Fraction {
  readonly num: bigint;
  readonly den: bigint;
}

export const ZERO: Fraction = { num: 0n, den: 1n };

export function fraction(num: bigint, den: bigint): Fraction {
  const divisor = commonDivisor(num < 0n ? -num : num, den < 0n ? -den : den) || 1n;
  const sign = den < 0n ? -1n : 1n;
  return { num: (sign * num) / divisor, den: (sign * den) / divisor };
}

function commonDivisor(a: bigint, b: bigint): bigint {
  return b === 0n ? a : commonDivisor(b, a % b);
}

export function plus(a: Fraction, b: Fraction): Fraction {
  return fraction(a.num * b.den + b.num * a.den, a.den * b.den);
}

export function times(a: Fraction, b: Fraction): Fraction {
  return fraction(a.num * b.num, a.den * b.den);
}

/** `b` must not be zero. */
export function over(a: Fraction, b: Fraction): Fraction {
  return fraction(a.num * b.den, a.den * b.num);
}

export function fractionText({ num, den }: Fraction): string {
  return den === 1n ? `${num}` : `${num}/${den}`;
}

const WRITTEN = /^(\d{1,12})(?:\.(\d{1,6})|\/(\d{1,12}))?$/;

/** "0.6", "3/5" or "1"; null for anything else. */
export function parseFraction(text: string): Fraction | null {
  const found = WRITTEN.exec(text);
  if (found === null) return null;
  const [, whole = '0', decimals, den] = found;
  if (den !== undefined) return BigInt(den) === 0n ? null : fraction(BigInt(whole), BigInt(den));
  if (decimals === undefined) return fraction(BigInt(whole), 1n);
  return fraction(BigInt(whole + decimals), 10n ** BigInt(decimals.length));
}

/** Rounded half up to `places` decimals, as text; for values of zero or more. */
export function roundedText({ num, den }: Fraction, places: number): string {
  const scale = 10n ** BigInt(places);
  const scaled = (2n * num * scale + den) / (2n * den);
  const text = scaled.toString().padStart(places + 1, '0');
  return places === 0 ? text : `${text.slice(0, -places)}.${text.slice(-places)}`;
}
