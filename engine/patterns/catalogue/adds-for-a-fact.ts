import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** A fact is answered with the sum of its digits. */
export const addsForAFact: ErrorPattern = {
  id: 'adds instead of multiplying',
  skill: 'fact',
  stages: ['cells', 'paper'],
  sign: 'addsForAFact',
  beliefs: { '': { fact: ({ a, b }, right) => (a === 0 || b === 0 ? right : a + b) } },
  repeat: 'factsByHeart',
  source: fromMemory(
    'Campbell and Graham (1985), Can. J. Psych. 39: answers of a neighbouring operand',
  ),
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'paper', multiplicand: '200', multiplier: '2' },
};
