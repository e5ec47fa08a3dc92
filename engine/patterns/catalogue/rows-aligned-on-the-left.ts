import { type ErrorPattern, readIn } from '../pattern.ts';

/** The first digits of the rows stand under each other. */
export const rowsAlignedOnTheLeft: ErrorPattern = {
  id: 'rows lined up on the left',
  skill: 'placeholder',
  stages: ['paper'],
  sign: 'rowsAlignedOnTheLeft',
  beliefs: {
    '': {
      shift: ({ row, length, first }, right) =>
        row === 0 || first === 0 ? right : Math.max(0, first - length),
    },
  },
  repeat: 'recording',
  source: readIn('Thorndike, The Psychology of Arithmetic (1922), and teachers’ reports in print'),
  fires: { stage: 'paper', multiplicand: '468', multiplier: '73', gives: '4680' },
  silent: { stage: 'paper', multiplicand: '468', multiplier: '3' },
};
