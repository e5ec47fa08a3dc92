import { addWords, loadWords, type Phrase } from './words.ts';

addWords(
  await loadWords<Readonly<Record<string, Phrase>>>({
    en: async () => (await import('./choice-en.ts')).choiceEn,
    es: async () => (await import('./choice-es.ts')).choiceEs,
  }),
);
