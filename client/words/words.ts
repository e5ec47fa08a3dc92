import { en } from './en.ts';
import type { Values } from './values.ts';

export type WordId = keyof typeof en;
type Language = Record<WordId, string | ((values: Values) => string)>;

/** One file a language; whoever adds one adds it here. */
const LANGUAGES: Readonly<Record<string, Language>> = { en };

/** Browsers hand out tags that the standard does not know ("en-US@posix"): those are no use to Intl. */
const isTag = (tag: string): boolean => {
  try {
    return Intl.getCanonicalLocales(tag).length > 0;
  } catch {
    return false;
  }
};

const pickLanguage = (wanted: readonly string[]): [string, Language] => {
  for (const tag of wanted.filter(isTag)) {
    const found = LANGUAGES[tag.toLowerCase().split('-')[0] ?? ''];
    if (found !== undefined) return [tag, found];
  }
  return ['en', en];
};

const [locale, language] = pickLanguage(navigator.languages);
const numbers = new Intl.NumberFormat(locale);
document.documentElement.lang = locale;

/** A word or sentence by id. Numbers given as numbers are written the locale's way; texts stay as they are. */
export const words = (id: WordId, values: Values = {}): string => {
  const phrase = language[id];
  if (typeof phrase === 'function') return phrase(values);
  return phrase.replace(/\{(\w+)\}/g, (_, name: string) => {
    const value = values[name];
    return typeof value === 'number' ? numbers.format(value) : String(value ?? '');
  });
};

/** How this reader writes the decimal point. */
export const pointSign =
  numbers.formatToParts(0.5).find(({ type }) => type === 'decimal')?.value ?? '.';

/** A written number ("1250.5") grouped and pointed the locale's way; digits stay exact. */
export const numeral = (text: string): string => {
  const [whole = '0', decimals] = text.split('.');
  const grouped = numbers.format(BigInt(whole));
  return decimals === undefined ? grouped : `${grouped}${pointSign}${decimals}`;
};

/** A moment in the reader's own way of writing it. */
export const moment = (at: string | number): string =>
  new Intl.DateTimeFormat(locale, { dateStyle: 'short', timeStyle: 'short' }).format(new Date(at));

export const placeWord = (place: number): string => words('place', { place });
export const rowWord = (row: number): string => words('theRow', { row });
