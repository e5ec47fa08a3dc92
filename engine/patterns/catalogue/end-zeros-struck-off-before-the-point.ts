import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** The zeros at the end do not count as decimals. */
export const endZerosStruckOffBeforeThePoint: ErrorPattern = {
  id: 'zeros at the end struck off before the point is set',
  skill: 'point',
  stages: ['bars', 'record', 'cells', 'paper'],
  sign: 'endZerosStruckOffBeforeThePoint',
  beliefs: {
    '': {
      point: ({ written }, right) => {
        const zeros = written.findIndex((digit) => digit !== 0);
        return right + Math.max(0, zeros);
      },
    },
  },
  repeat: 'decimalMat',
  source: fromMemory(
    'Hiebert and Wearne (1985), J. Res. Math. Educ. 16: decimals as rules of symbols',
  ),
  fires: { stage: 'paper', multiplicand: '0.25', multiplier: '0.4' },
  silent: { stage: 'paper', multiplicand: '1.2', multiplier: '3.4' },
};
