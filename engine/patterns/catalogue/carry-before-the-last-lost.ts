import { handedOn } from '../../pupils/written.ts';
import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** The last product of a row is written without the small figure that waits for it. */
export const carryBeforeTheLastLost: ErrorPattern = {
  id: 'carry into the last column forgotten',
  skill: 'partial',
  stages: ['paper'],
  sign: 'carryBeforeTheLastLost',
  beliefs: {
    '': {
      column: ({ fact, last, column }, right) =>
        last && column > 0 ? handedOn(fact, true) : right,
    },
  },
  repeat: 'exchange',
  source: DERIVED,
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'paper', multiplicand: '312', multiplier: '21' },
};
