import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** The point stands as in the number above. */
export const pointOfTheMultiplicand: ErrorPattern = {
  id: 'decimals of the multiplicand only',
  skill: 'point',
  stages: ['bars', 'record', 'cells', 'paper'],
  sign: 'pointOfTheMultiplicand',
  beliefs: { '': { point: ({ places }) => places[0] } },
  repeat: 'decimalMat',
  source: fromMemory(
    'Hiebert and Wearne (1985), J. Res. Math. Educ. 16: decimals as rules of symbols',
  ),
  fires: { stage: 'paper', multiplicand: '2.4', multiplier: '1.36', gives: '326.4' },
  silent: { stage: 'paper', multiplicand: '2.4', multiplier: '13' },
};
