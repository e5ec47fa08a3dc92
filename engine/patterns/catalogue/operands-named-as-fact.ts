import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** Seven eights are seventy-eight. */
export const operandsNamedAsFact: ErrorPattern = {
  id: 'digits of a fact named one after the other',
  skill: 'fact',
  stages: ['cells', 'paper'],
  sign: 'operandsNamedAsFact',
  beliefs: { '': { fact: ({ a, b }, right) => (a < 2 || b < 2 ? right : 10 * a + b) } },
  repeat: 'factsByHeart',
  source: fromMemory(
    'Campbell and Graham (1985), Can. J. Psych. 39: answers of a neighbouring operand',
  ),
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'paper', multiplicand: '111', multiplier: '11' },
};
