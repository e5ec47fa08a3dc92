import type { Values } from './values.ts';

type Phrase = string | ((values: Values) => string);

const PLAIN = 'AEIOUaeiounc';
const MARKED = 'ÀÉÎÕÜàéîõüñç';

const mark = (text: string): string =>
  text.replace(/[AEIOUaeiounc]/g, (letter) => MARKED[PLAIN.indexOf(letter)] ?? letter);

/** Names of values stay as they are. */
const markAround = (text: string): string =>
  text
    .split(/(\{\w+\})/)
    .map((part, index) => (index % 2 === 0 ? mark(part) : part))
    .join('');

/** A third longer and in brackets: what is cut off, or stands in no list of words, is seen at once (CLDR's `en-XA`). */
const dress = (text: string): string =>
  text === '' ? '' : `[${text}${'·'.repeat(Math.ceil(text.length / 3))}]`;

const pseudo = (phrase: Phrase): Phrase =>
  typeof phrase === 'string' ? dress(markAround(phrase)) : (values) => dress(mark(phrase(values)));

/** The same words, made to stand out. */
export const pseudoWords = <T extends Readonly<Record<string, Phrase>>>(all: T): T =>
  Object.fromEntries(Object.entries(all).map(([id, phrase]) => [id, pseudo(phrase)])) as T;
