import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** No tile lies for a zero, and the digits close up. */
export const zerosNotBuilt: ErrorPattern = {
  id: 'zeros left out when a number is built',
  skill: 'building',
  stages: ['bars', 'record', 'cells'],
  sign: 'zerosNotBuilt',
  beliefs: {
    '': {
      build: ({ edge, digits }, right) =>
        edge === 'bottom' ? digits.filter((digit) => digit !== 0) : right,
    },
  },
  repeat: 'numberBuilding',
  source: fromMemory('Cox (1975), J. Res. Math. Educ. 6: systematic errors in multiplication'),
  fires: { stage: 'bars', multiplicand: '304', multiplier: '26', gives: '884' },
  silent: { stage: 'bars', multiplicand: '347', multiplier: '26' },
};
