import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** Units times units, tens times tens, and nothing else. */
export const onlyLikePlaces: ErrorPattern = {
  id: 'only like places multiplied',
  skill: 'laying',
  stages: ['bars', 'record', 'cells'],
  sign: 'onlyLikePlaces',
  beliefs: { '': { works: ({ row, column }) => row === column } },
  repeat: 'placesOfProducts',
  source: fromMemory('Cox (1975), J. Res. Math. Educ. 6: systematic errors in multiplication'),
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26', gives: '842' },
  silent: { stage: 'bars', multiplicand: '7', multiplier: '6' },
};
