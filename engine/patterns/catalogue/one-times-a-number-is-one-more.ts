import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** Times one counts one on. */
export const oneTimesANumberIsOneMore: ErrorPattern = {
  id: 'one times a number makes one more',
  skill: 'fact',
  stages: ['cells', 'paper'],
  sign: 'oneTimesANumberIsOneMore',
  beliefs: {
    '': { fact: ({ a, b }, right) => (a * b > 0 && (a === 1 || b === 1) ? a + b : right) },
  },
  repeat: 'factsByHeart',
  source: fromMemory(
    'Campbell and Graham (1985), Can. J. Psych. 39: answers of a neighbouring operand',
  ),
  fires: { stage: 'paper', multiplicand: '317', multiplier: '26' },
  silent: { stage: 'paper', multiplicand: '347', multiplier: '26' },
};
