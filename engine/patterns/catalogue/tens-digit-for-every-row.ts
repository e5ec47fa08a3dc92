import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** All rows are worked with the same, the highest, digit. */
export const tensDigitForEveryRow: ErrorPattern = {
  id: 'highest digit of the multiplier used for every row',
  skill: 'partial',
  stages: ['bars', 'record', 'cells', 'paper'],
  sign: 'tensDigitForEveryRow',
  beliefs: { '': { partner: ({ up }) => up.at(-1) ?? 0 } },
  repeat: 'placesOfProducts',
  source: DERIVED,
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'paper', multiplicand: '347', multiplier: '22' },
};
