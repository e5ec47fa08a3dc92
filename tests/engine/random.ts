import type { Chance } from '../oracle/chance.ts';

/** A number of so many digits, zeros anywhere but in front, now and then with a point. */
export function randomNumber(chance: Chance, digits: number): string {
  const text = Array.from({ length: digits }, (_, index) =>
    index === 0 && digits > 1 ? 1 + chance.below(9) : chance.maybe(0.2) ? 0 : chance.below(10),
  ).join('');
  if (!chance.maybe(0.2)) return text;
  const places = 1 + chance.below(2);
  const padded = text.padStart(places + 1, '0');
  return `${padded.slice(0, -places)}.${padded.slice(-places)}`;
}
