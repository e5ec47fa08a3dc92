import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** The leading digit of the product is missing. */
export const lastCarryOfTheSumLost: ErrorPattern = {
  id: 'last carry of the sum left off',
  skill: 'adding',
  stages: ['paper', 'cells'],
  sign: 'lastCarryOfTheSumLost',
  beliefs: {
    '': {
      add: ({ last }, right) => (last ? { writes: right.writes.slice(0, 1), carry: 0 } : right),
    },
  },
  repeat: 'writtenPartials',
  source: DERIVED,
  fires: { stage: 'paper', multiplicand: '347', multiplier: '29' },
  silent: { stage: 'paper', multiplicand: '312', multiplier: '21' },
};
