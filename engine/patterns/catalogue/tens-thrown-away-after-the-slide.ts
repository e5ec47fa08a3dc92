import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** After sliding, ten-bars of the bottom row are cleared away. */
export const tensThrownAwayAfterTheSlide: ErrorPattern = {
  id: 'tens thrown away in the last exchange',
  skill: 'exchanging',
  stages: ['bars', 'record'],
  sign: 'tensThrownAwayAfterTheSlide',
  beliefs: {
    '': {
      exchange: ({ afterSliding }, right) =>
        afterSliding && right ? { ones: 0, left: right.left } : right,
    },
  },
  repeat: 'slide',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'bars', multiplicand: '312', multiplier: '21' },
};
