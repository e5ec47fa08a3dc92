import { handedOn } from '../../pupils/written.ts';
import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** The small figures of one row are added in the next row too. */
export const carriesOfTheRowBefore: ErrorPattern = {
  id: 'carries of the row before used again',
  skill: 'partial',
  stages: ['paper'],
  sign: 'carriesOfTheRowBefore',
  beliefs: {
    '': {
      column: ({ fact, carry, column, last, earlier }, right) => {
        const again = column === 0 ? 0 : (earlier()[column - 1] ?? 0);
        return again === 0 ? right : handedOn(fact + carry + again, last);
      },
    },
  },
  repeat: 'writtenAlgorithm',
  source: fromMemory('Ashlock, Error Patterns in Computation (editions 1972–2010)'),
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26', gives: '11422' },
  silent: { stage: 'paper', multiplicand: '312', multiplier: '21' },
};
