import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** The product has as many decimals as the number that has more. */
export const pointAsInAdding: ErrorPattern = {
  id: 'point set as in adding',
  skill: 'point',
  stages: ['bars', 'record', 'cells', 'paper'],
  sign: 'pointAsInAdding',
  beliefs: { '': { point: ({ places }) => Math.max(...places) } },
  repeat: 'decimalMat',
  source: fromMemory(
    'Hiebert and Wearne (1985), J. Res. Math. Educ. 16: decimals as rules of symbols',
  ),
  fires: { stage: 'paper', multiplicand: '2.4', multiplier: '1.36', gives: '32.64' },
  silent: { stage: 'paper', multiplicand: '2.4', multiplier: '13' },
};
