import type { choiceEn } from './choice-en.ts';

/** The start screen of a choice, in Spanish. */
export const choiceEs: Record<keyof typeof choiceEn, string> = {
  chooseOne: '¿Cuál quieres hacer?',
  chosenBefore: 'Este lo elegiste antes. Sigue con él.',
  someQuestions: '{count} preguntas sobre el tapete',
  freeMat: 'Un tapete para ti',
};
