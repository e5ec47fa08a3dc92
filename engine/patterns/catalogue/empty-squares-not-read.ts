import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** Where a square is empty, no zero is written or said. */
export const emptySquaresNotRead: ErrorPattern = {
  id: 'empty squares not read',
  skill: 'reading',
  stages: ['bars', 'record'],
  sign: 'emptySquaresNotRead',
  beliefs: {
    '': {
      read: ({ piles }, right) => {
        const lies = piles.filter((beads) => beads > 0);
        return piles.every((beads) => beads < 10) && lies.length > 0 ? lies : right;
      },
    },
  },
  repeat: 'recording',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'bars', multiplicand: '213', multiplier: '3' },
};
