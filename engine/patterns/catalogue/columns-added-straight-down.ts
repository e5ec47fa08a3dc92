import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** Digits of a column, not of a diagonal, are added. */
export const columnsAddedStraightDown: ErrorPattern = {
  id: 'digits added straight down the columns',
  skill: 'adding',
  stages: ['cells'],
  sign: 'columnsAddedStraightDown',
  beliefs: { '': { gather: ({ square }) => square[1] } },
  repeat: 'slide',
  source: DERIVED,
  fires: { stage: 'cells', multiplicand: '347', multiplier: '26', gives: '2776' },
  silent: { stage: 'cells', multiplicand: '347', multiplier: '6' },
};
