import { addWords, loadWords, type Phrase } from './words.ts';

addWords(
  await loadWords<Readonly<Record<string, Phrase>>>({
    en: async () => (await import('./help-en.ts')).helpEn,
    es: async () => (await import('./help-es.ts')).helpEs,
  }),
);
