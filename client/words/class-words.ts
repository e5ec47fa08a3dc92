import { classEn } from './class-en.ts';
import type { Values } from './values.ts';
import { fill, type Phrase, pickLanguage } from './words.ts';

export type ClassWordId = keyof typeof classEn;
const language = pickLanguage<Record<ClassWordId, Phrase>>({ en: classEn });

/** A word or sentence of the teacher's pages by id. */
export const classWords = (id: ClassWordId, values: Values = {}): string =>
  fill(language[id], values);
