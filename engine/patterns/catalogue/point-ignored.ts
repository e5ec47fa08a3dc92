import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** The product is read as a whole number. */
export const pointIgnored: ErrorPattern = {
  id: 'point left out',
  skill: 'point',
  stages: ['bars', 'record', 'cells', 'paper'],
  sign: 'pointIgnored',
  beliefs: { '': { point: () => 0 } },
  repeat: 'decimalMat',
  source: fromMemory(
    'Hiebert and Wearne (1985), J. Res. Math. Educ. 16: decimals as rules of symbols',
  ),
  fires: { stage: 'paper', multiplicand: '1.2', multiplier: '3.4', gives: '408' },
  silent: { stage: 'paper', multiplicand: '12', multiplier: '34' },
};
