import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** Facts from six on come out one group too small. */
export const oneGroupTooFew: ErrorPattern = {
  id: 'one group too few in hard facts',
  skill: 'fact',
  stages: ['cells', 'paper'],
  sign: 'oneGroupTooFew',
  beliefs: { '': { fact: ({ a, b }, right) => (a > 5 && b > 5 ? a * (b - 1) : right) } },
  repeat: 'factsByHeart',
  source: fromMemory(
    'Campbell and Graham (1985), Can. J. Psych. 39: answers of a neighbouring operand',
  ),
  fires: { stage: 'paper', multiplicand: '867', multiplier: '96' },
  silent: { stage: 'paper', multiplicand: '345', multiplier: '23' },
};
