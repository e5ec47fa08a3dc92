import { handedOn } from '../../pupils/written.ts';
import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** The first small figure of a row is added in all columns that follow. */
export const firstCarryEverywhere: ErrorPattern = {
  id: 'first carry of a row added at every place',
  skill: 'partial',
  stages: ['paper'],
  sign: 'firstCarryEverywhere',
  beliefs: {
    '': {
      column: ({ fact, last, handed }, right) => {
        const first = handed.find((carry) => carry > 0);
        return first === undefined ? right : handedOn(fact + first, last);
      },
    },
  },
  repeat: 'writtenAlgorithm',
  source: fromMemory('Buswell and John (1926), Diagnostic Studies in Arithmetic'),
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26', gives: '10222' },
  silent: { stage: 'paper', multiplicand: '312', multiplier: '21' },
};
