import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** A carry of the sum is noted over the next column but one. */
export const sumCarryTwoPlacesUp: ErrorPattern = {
  id: 'carry put two places up in adding',
  skill: 'adding',
  stages: ['paper', 'cells'],
  sign: 'sumCarryTwoPlacesUp',
  beliefs: {
    '': {
      add: ({ last }, right) =>
        last ? right : { writes: right.writes, carry: right.carry, feeds: 2 },
    },
  },
  repeat: 'writtenPartials',
  source: DERIVED,
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'paper', multiplicand: '312', multiplier: '21' },
};
