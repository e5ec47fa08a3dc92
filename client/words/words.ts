import { en } from './en.ts';
import type { Values } from './values.ts';

export type WordId = keyof typeof en;
export type Phrase = string | ((values: Values) => string);
type Language = Record<WordId, Phrase>;

/** One file a language; whoever adds one adds it here. */
const LANGUAGES: { readonly en: Language } & Readonly<Record<string, Language>> = { en };

const languageOf = (tag: string): string => tag.toLowerCase().split('-')[0] ?? '';

/** Browsers hand out tags that the standard does not know ("en-US@posix"): those are no use to Intl. */
const isTag = (tag: string): boolean => {
  try {
    return Intl.getCanonicalLocales(tag).length > 0;
  } catch {
    return false;
  }
};

const FALLBACK = 'en';
const locale =
  navigator.languages.filter(isTag).find((tag) => languageOf(tag) in LANGUAGES) ?? FALLBACK;
const numbers = new Intl.NumberFormat(locale);
document.documentElement.lang = locale;

/** The reader's own among the languages that there are. */
export const pickLanguage = <T>(languages: { readonly en: T } & Readonly<Record<string, T>>): T =>
  languages[languageOf(locale)] ?? languages.en;

/** Puts values into a phrase. Numbers given as numbers are written the locale's way; texts stay as they are. */
export const fill = (phrase: Phrase, values: Values): string => {
  if (typeof phrase === 'function') return phrase(values);
  return phrase.replace(/\{(\w+)\}/g, (_, name: string) => {
    const value = values[name];
    return typeof value === 'number' ? numbers.format(value) : String(value ?? '');
  });
};

const language = pickLanguage<Language>(LANGUAGES);

/** A word or sentence by id. */
export const words = (id: WordId, values: Values = {}): string => fill(language[id], values);

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
