import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** Each column of the sum keeps its units only. */
export const carriesLostInAdding: ErrorPattern = {
  id: 'carries lost when the rows are added',
  skill: 'adding',
  stages: ['paper', 'cells'],
  sign: 'carriesLostInAdding',
  beliefs: {
    '': {
      add: ({ digits }) => ({
        writes: [digits.reduce<number>((sum, digit) => sum + (digit ?? 0), 0) % 10],
        carry: 0,
      }),
    },
  },
  repeat: 'writtenPartials',
  source: fromMemory('Cox (1975), J. Res. Math. Educ. 6: systematic errors in multiplication'),
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26', gives: '8922' },
  silent: { stage: 'paper', multiplicand: '312', multiplier: '21' },
};
