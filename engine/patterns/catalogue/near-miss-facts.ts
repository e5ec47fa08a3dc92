import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** Facts from six on are counted out and end one short. */
export const nearMissFacts: ErrorPattern = {
  id: 'hard facts one bead short',
  skill: 'fact',
  stages: ['cells', 'paper'],
  sign: 'nearMissFacts',
  beliefs: { '': { fact: ({ a, b }, right) => (a > 5 && b > 5 ? right - 1 : right) } },
  repeat: 'factsByHeart',
  source: fromMemory(
    'Campbell and Graham (1985), Can. J. Psych. 39: answers of a neighbouring operand',
  ),
  fires: { stage: 'paper', multiplicand: '867', multiplier: '96' },
  silent: { stage: 'paper', multiplicand: '345', multiplier: '23' },
};
