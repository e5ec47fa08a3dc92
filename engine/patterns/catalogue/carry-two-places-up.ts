import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** The small figure is noted over the next column but one. */
export const carryTwoPlacesUp: ErrorPattern = {
  id: 'carry put two places up',
  skill: 'partial',
  stages: ['paper'],
  sign: 'carryTwoPlacesUp',
  beliefs: {
    '': {
      column: ({ last }, right) =>
        last ? right : { writes: right.writes, carry: right.carry, feeds: 2 },
    },
  },
  repeat: 'exchange',
  source: fromMemory('Attisha and Yazdani (1984), executable catalogue of multiplication errors'),
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26', gives: '12082' },
  silent: { stage: 'paper', multiplicand: '312', multiplier: '21' },
};
