import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** The numbers are multiplied without their last zeros, which never come back. */
export const endZerosDropped: ErrorPattern = {
  id: 'zeros at the end of the numbers dropped',
  skill: 'placeholder',
  stages: ['paper'],
  sign: 'endZerosDropped',
  beliefs: {
    '': {
      column: ({ a, column, across }, right) =>
        across.slice(0, column + 1).every((digit) => digit === 0) && a === 0
          ? { writes: [], carry: 0 }
          : right,
      shift: ({ row, up }) => row - up.findIndex((digit) => digit !== 0),
    },
  },
  repeat: 'recording',
  source: fromMemory('Cox (1975), J. Res. Math. Educ. 6: systematic errors in multiplication'),
  fires: { stage: 'paper', multiplicand: '230', multiplier: '40', gives: '92' },
  silent: { stage: 'paper', multiplicand: '304', multiplier: '26' },
};
