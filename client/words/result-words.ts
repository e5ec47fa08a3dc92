import { addWords, loadWords, type Phrase } from './words.ts';

addWords(
  await loadWords<Readonly<Record<string, Phrase>>>({
    en: async () => (await import('./result-en.ts')).resultEn,
    es: async () => (await import('./result-es.ts')).resultEs,
  }),
);
