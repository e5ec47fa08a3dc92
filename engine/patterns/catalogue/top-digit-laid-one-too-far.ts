import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** One square of the units row is passed over. */
export const topDigitLaidOneTooFar: ErrorPattern = {
  id: 'highest digit of the units row laid one square too far left',
  skill: 'laying',
  stages: ['bars', 'record', 'cells'],
  sign: 'topDigitLaidOneTooFar',
  beliefs: {
    '': { aside: ({ row, column, across }) => (row === 0 && column === across.length - 1 ? 1 : 0) },
  },
  repeat: 'layingARow',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26', gives: '25222' },
  silent: { stage: 'bars', multiplicand: '347', multiplier: '20' },
};
