import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** The diagonals that rise to the left are added. */
export const otherDiagonalsAdded: ErrorPattern = {
  id: 'digits added along the other diagonals',
  skill: 'adding',
  stages: ['cells'],
  sign: 'otherDiagonalsAdded',
  beliefs: {
    '': { gather: ({ square: [row, column], rows }) => column + Math.max(0, rows - 1 - row) },
  },
  repeat: 'slide',
  source: DERIVED,
  fires: { stage: 'cells', multiplicand: '347', multiplier: '26', gives: '21514' },
  silent: { stage: 'cells', multiplicand: '347', multiplier: '6' },
};
