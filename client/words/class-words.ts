import type { classEn } from './class-en.ts';
import type { Values } from './values.ts';
import { fill, loadWords, type Phrase } from './words.ts';

export type ClassWordId = keyof typeof classEn;
const language = await loadWords<Record<ClassWordId, Phrase>>({
  en: async () => (await import('./class-en.ts')).classEn,
  es: async () => (await import('./class-es.ts')).classEs,
});

/** A word or sentence of the teacher's pages by id. */
export const classWords = (id: ClassWordId, values: Values = {}): string =>
  fill(language[id], values);
