import type { printEn } from './class-print-en.ts';
import type { Values } from './values.ts';
import { fill, loadWords, type Phrase } from './words.ts';

export type PrintWordId = keyof typeof printEn;
const language = await loadWords<Record<PrintWordId, Phrase>>({
  en: async () => (await import('./class-print-en.ts')).printEn,
  es: async () => (await import('./class-print-es.ts')).printEs,
});

/** A word or sentence of the printing page by id. */
export const printWords = (id: PrintWordId, values: Values = {}): string =>
  fill(language[id], values);

interface HelpPart {
  readonly heading: PrintWordId;
  readonly lines: readonly PrintWordId[];
}

/** The adult's sheet, in its order. */
export const HELP_PARTS: readonly HelpPart[] = [
  { heading: 'helpMat', lines: ['helpMat1', 'helpMat2', 'helpMat3'] },
  { heading: 'helpDo', lines: ['helpDo1', 'helpDo2', 'helpDo3', 'helpDo4', 'helpDo5'] },
  { heading: 'helpNot', lines: ['helpNot1', 'helpNot2', 'helpNot3'] },
  { heading: 'helpSee', lines: ['helpSee1', 'helpSee2'] },
];
