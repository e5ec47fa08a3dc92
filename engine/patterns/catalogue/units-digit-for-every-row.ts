import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** All rows are worked with the same, the lowest, digit. */
export const unitsDigitForEveryRow: ErrorPattern = {
  id: 'units digit of the multiplier used for every row',
  skill: 'partial',
  stages: ['bars', 'record', 'cells', 'paper'],
  sign: 'unitsDigitForEveryRow',
  beliefs: { '': { partner: ({ up }) => up[0] ?? 0 } },
  repeat: 'placesOfProducts',
  source: fromMemory('Cox (1975), J. Res. Math. Educ. 6: systematic errors in multiplication'),
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26', gives: '22902' },
  silent: { stage: 'paper', multiplicand: '347', multiplier: '22' },
};
