/**
 * Which problems a written specification asks for, by looking at every pair of numbers, slowly and
 * from the words of the specification alone. Shares nothing with the engine.
 */
type Span = number | { from?: number; to?: number };
type Fact = number | [number, number];
type Zeros = 'none' | 'some' | { inside?: boolean; atTheEnd?: boolean };

export interface Wanted {
  stage?: string;
  multiplicand?: { digits?: Span; zeros?: Zeros; decimals?: Span };
  multiplier?: { digits?: Span; zeros?: Zeros; decimals?: Span };
  exchanges?: Span | Span[];
  largestPile?: Span;
  facts?: { allowed?: Fact[]; required?: Fact[]; avoided?: Fact[] };
  product?: { digits?: Span };
  mat?: { rows: number; columns: number };
}

const inSpan = (value: number, span: Span): boolean =>
  typeof span === 'number'
    ? value === span
    : (span.from === undefined || value >= span.from) &&
      (span.to === undefined || value <= span.to);

const lengthOf = (span: Span): number => {
  let length = 0;
  for (let value = 0; value <= 8; value++) if (inSpan(value, span)) length += 1;
  return length;
};

function zerosSuit(text: string, zeros: Zeros): boolean {
  if (zeros === 'none') return !text.includes('0');
  if (zeros === 'some') return text.includes('0');
  const inside = /[1-9]0+[1-9]/.test(text);
  const atTheEnd = text.endsWith('0');
  if (zeros.inside !== undefined && zeros.inside !== inside) return false;
  return zeros.atTheEnd === undefined || zeros.atTheEnd === atTheEnd;
}

/** The piles of one row: what the whole row is worth up to a square tells what comes into the next. */
function pilesOf(multiplicand: string, digit: number): number[] {
  const piles: number[] = [];
  for (let place = 0; place < multiplicand.length; place++) {
    const below = Number(multiplicand.slice(multiplicand.length - place) || '0');
    const comesIn = (below * digit - ((below * digit) % 10 ** place)) / 10 ** place;
    piles.push(Number(multiplicand[multiplicand.length - 1 - place]) * digit + comesIn);
  }
  return piles;
}

const isFact = (fact: Fact, a: number, b: number): boolean =>
  typeof fact === 'number'
    ? fact === a || fact === b
    : (fact[0] === a && fact[1] === b) || (fact[0] === b && fact[1] === a);

/** `table[10 * a + b]`: whether a × b is listed. Kept, because a list is asked about for each pair. */
function tableOf(listed: readonly Fact[]): boolean[] {
  const kept = tables.get(listed);
  if (kept) return kept;
  const table = Array.from({ length: 100 }, (_, pair) =>
    listed.some((fact) => isFact(fact, Math.floor(pair / 10), pair % 10)),
  );
  tables.set(listed, table);
  return table;
}
const tables = new WeakMap<readonly Fact[], boolean[]>();

function factsSuit(a: string, b: string, facts: NonNullable<Wanted['facts']>): boolean {
  const { allowed, required = [], avoided } = facts;
  const missing = new Set(required);
  for (let i = 0; i < a.length; i++) {
    for (let j = 0; j < b.length; j++) {
      const [x, y] = [Number(a[i]), Number(b[j])];
      if (x === 0 || y === 0) continue;
      if (allowed && !tableOf(allowed)[10 * x + y]) return false;
      if (avoided && tableOf(avoided)[10 * x + y]) return false;
      for (const fact of missing) if (isFact(fact, x, y)) missing.delete(fact);
    }
  }
  return missing.size === 0;
}

function digitsSuit(text: string, factor: Wanted['multiplicand']): boolean {
  if (factor?.digits !== undefined && !inSpan(text.length, factor.digits)) return false;
  return factor?.zeros === undefined || zerosSuit(text, factor.zeros);
}

/** Whether this pair of laid digits is asked for. */
export function isWanted(a: string, b: string, wanted: Wanted): boolean {
  const { rows, columns } = wanted.mat ?? { rows: 6, columns: 13 };
  if (b.length > Math.min(rows, 6) || a.length + b.length > Math.min(columns, 13)) return false;
  if (wanted.stage === 'walk') return false;
  if (wanted.stage === 'bars1' && b.length !== 1) return false;
  if (wanted.stage === 'bars' && b.length === 1) return false;
  if (!digitsSuit(a, wanted.multiplicand) || !digitsSuit(b, wanted.multiplier)) return false;
  if (wanted.product?.digits !== undefined) {
    if (!inSpan(String(Number(a) * Number(b)).length, wanted.product.digits)) return false;
  }
  if (wanted.facts && !factsSuit(a, b, wanted.facts)) return false;
  if (wanted.exchanges === undefined && wanted.largestPile === undefined) return true;
  return rowsSuit(a, b, wanted);
}

function rowsSuit(a: string, b: string, { exchanges, largestPile }: Wanted): boolean {
  const rows = [...b].reverse().map((digit) => pilesOf(a, Number(digit)));
  if (largestPile !== undefined) {
    const largest = rows.reduce((most, piles) => Math.max(most, ...piles), 0);
    if (!inSpan(largest, largestPile)) return false;
  }
  if (exchanges === undefined) return true;
  const done = rows.map((piles) => piles.reduce((times, pile) => times + (pile > 9 ? 1 : 0), 0));
  if (!Array.isArray(exchanges)) return done.every((times) => inSpan(times, exchanges));
  return exchanges.every((span, row) => row < done.length && inSpan(done[row]!, span));
}

/** How many problems are wanted among numbers of at most `longest` digits each. */
export function countByLooking(wanted: Wanted, longest: { a: number; b: number }): number {
  const upTo = (digits: number) =>
    Array.from({ length: 10 ** digits - 1 }, (_, index) => `${index + 1}`);
  const multipliers = upTo(longest.b);
  let pairs = 0;
  for (const a of upTo(longest.a)) {
    for (const b of multipliers) if (isWanted(a, b, wanted)) pairs += 1;
  }
  const points = [wanted.multiplicand?.decimals ?? 0, wanted.multiplier?.decimals ?? 0];
  return pairs * lengthOf(points[0]!) * lengthOf(points[1]!);
}
