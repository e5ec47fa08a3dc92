/** Two numbers as somebody typed them, exact, with "." for the point. */
export interface TypedPair {
  readonly multiplicand: string;
  readonly multiplier: string;
}

/** How this reader groups digits and sets the point. */
export interface Signs {
  readonly group: string;
  readonly point: string;
}

export interface TypedLine {
  /** Counted from 1. */
  readonly line: number;
  readonly text: string;
  /** Null: not two numbers, or not to be told apart from others. */
  readonly pair: TypedPair | null;
}

export const signsOf = (locale: string): Signs => {
  const parts = new Intl.NumberFormat(locale, { useGrouping: true }).formatToParts(1_234_567.5);
  const sign = (type: string) => parts.find((part) => part.type === type)?.value ?? '';
  return { group: sign('group') || ' ', point: sign('decimal') || '.' };
};

const escaped = (sign: string): string => sign.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** Plain digits, or digits in whole groups of three; anything else could mean two numbers and is refused. */
const numberOf = (text: string, { group, point }: Signs): string | null => {
  const groups = `(?:${escaped(group)}|[\\s\\u00a0\\u202f])`;
  const whole = `\\d+|\\d{1,3}(?:${groups}\\d{3})+`;
  const match = new RegExp(`^(${whole})(?:${escaped(point)}(\\d+))?$`).exec(text.trim());
  if (match === null) return null;
  const digits = (match[1] ?? '').replace(/\D/g, '');
  return match[2] === undefined ? digits : `${digits}.${match[2]}`;
};

const partsOf = (text: string): string[] => {
  const signed = text.split(/[×xX*·]/);
  if (signed.length > 1) return signed;
  // Without a sign two bare numbers are enough; a third word could be a group of digits.
  return text.trim().split(/\s+/);
};

const pairOf = (text: string, signs: Signs): TypedPair | null => {
  const [multiplicand, multiplier, ...more] = partsOf(text).map((part) => numberOf(part, signs));
  return multiplicand && multiplier && more.length === 0 ? { multiplicand, multiplier } : null;
};

/** A problem a line: `934 × 314`, `934 x 314`, `934 * 314`, `934 · 314` or `934 314`; empty lines are passed over. */
export const readTyped = (text: string, signs: Signs): TypedLine[] =>
  text
    .split('\n')
    .map((line, index) => ({ line: index + 1, text: line.trim(), pair: pairOf(line, signs) }))
    .filter((line) => line.text !== '');
