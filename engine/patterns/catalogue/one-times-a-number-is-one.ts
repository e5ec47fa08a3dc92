import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** A one swallows the other digit. */
export const oneTimesANumberIsOne: ErrorPattern = {
  id: 'one times a number makes one',
  skill: 'fact',
  stages: ['cells', 'paper'],
  sign: 'oneTimesANumberIsOne',
  beliefs: { '': { fact: ({ a, b }, right) => (a * b > 0 && (a === 1 || b === 1) ? 1 : right) } },
  repeat: 'factsByHeart',
  source: fromMemory(
    'Campbell and Graham (1985), Can. J. Psych. 39: answers of a neighbouring operand',
  ),
  fires: { stage: 'paper', multiplicand: '317', multiplier: '26' },
  silent: { stage: 'paper', multiplicand: '347', multiplier: '26' },
};
