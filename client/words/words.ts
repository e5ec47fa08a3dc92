import type { choiceEn } from './choice-en.ts';
import type { en } from './en.ts';
import type { helpEn } from './help-en.ts';
import { languageOf, locale, numberLocale } from './locale.ts';
import type { resultEn } from './result-en.ts';
import type { Values } from './values.ts';

type LaterId = keyof typeof choiceEn | keyof typeof helpEn | keyof typeof resultEn;
export type WordId = keyof typeof en | LaterId;
export type Phrase = string | ((values: Values) => string);

/** The reader's own among the languages that there are. */
export const pickLanguage = <T>(languages: { readonly en: T } & Readonly<Record<string, T>>): T =>
  languages[languageOf(locale)] ?? languages.en;

/** The words of a page: one file a language, of which only the reader's is fetched. */
export const loadWords = async <T extends Readonly<Record<string, Phrase>>>(
  languages: { readonly en: () => Promise<T> } & Readonly<Record<string, () => Promise<T>>>,
): Promise<T> => {
  const all = await pickLanguage(languages)();
  return locale.toLowerCase() === 'en-xa' ? (await import('./pseudo.ts')).pseudoWords(all) : all;
};

const numbers = new Intl.NumberFormat(numberLocale);

/** Puts values into a phrase. Numbers given as numbers are written the locale's way; texts stay as they are. */
export const fill = (phrase: Phrase, values: Values): string => {
  if (typeof phrase === 'function') return phrase(values);
  return phrase.replace(/\{(\w+)\}/g, (_, name: string) => {
    const value = values[name];
    return typeof value === 'number' ? numbers.format(value) : String(value ?? '');
  });
};

const language = await loadWords<Record<Exclude<WordId, LaterId>, Phrase> & Record<string, Phrase>>(
  {
    en: async () => (await import('./en.ts')).en,
    es: async () => (await import('./es.ts')).es,
  },
);

const more: Record<string, Phrase> = {};

/** Words that are fetched later, such as those of help and of the result; until then their ids have no words. */
export const addWords = (phrases: Readonly<Record<string, Phrase>>): void => {
  Object.assign(more, phrases);
};

/** A word or sentence by id. */
export const words = (id: WordId, values: Values = {}): string =>
  fill(language[id] ?? more[id] ?? '', values);

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
  new Intl.DateTimeFormat(numberLocale, { dateStyle: 'short', timeStyle: 'short' }).format(
    new Date(at),
  );

export const placeWord = (place: number): string => words('place', { place });
export const rowWord = (row: number): string => words('theRow', { row });

/** What one bead is worth at a place: 10^`place`, as this reader writes it. */
export const placeWorth = (place: number): string =>
  numeral(place < 0 ? `0.${'0'.repeat(-place - 1)}1` : `1${'0'.repeat(place)}`);

interface Numbers {
  readonly multiplicand: { readonly text: string };
  readonly multiplier: { readonly text: string };
}

/** The two numbers of a problem, for a phrase that names them. */
export const numbersOf = ({ multiplicand, multiplier }: Numbers): Values => ({
  multiplicand: numeral(multiplicand.text),
  multiplier: numeral(multiplier.text),
});

/** A problem as it is read: two numbers and the sign between them. */
export const numbersText = (numbers: Numbers): string => words('problem', numbersOf(numbers));
