import { handedOn } from '../../pupils/written.ts';
import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** The small figure makes the product smaller. */
export const carryTakenAway: ErrorPattern = {
  id: 'carry taken away instead of added',
  skill: 'partial',
  stages: ['paper'],
  sign: 'carryTakenAway',
  beliefs: {
    '': {
      column: ({ fact, carry, last }, right) =>
        carry > 0 ? handedOn(Math.abs(fact - carry), last) : right,
    },
  },
  repeat: 'writtenAlgorithm',
  source: DERIVED,
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'paper', multiplicand: '312', multiplier: '21' },
};
