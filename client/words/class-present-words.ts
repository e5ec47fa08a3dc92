import type { presentEn } from './class-present-en.ts';
import type { Values } from './values.ts';
import { fill, loadWords, type Phrase } from './words.ts';

export type PresentWordId = keyof typeof presentEn;
const language = await loadWords<Record<PresentWordId, Phrase>>({
  en: async () => (await import('./class-present-en.ts')).presentEn,
  es: async () => (await import('./class-present-es.ts')).presentEs,
});

/** A word or sentence of a presentation by id. */
export const presentWords = (id: PresentWordId, values: Values = {}): string =>
  fill(language[id], values);
