import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** Piles come down to the right. */
export const slidTheOtherWay: ErrorPattern = {
  id: 'slid along the other diagonal',
  skill: 'sliding',
  stages: ['bars', 'record'],
  sign: 'slidTheOtherWay',
  beliefs: { '': { slide: ({ down }) => -2 * down } },
  repeat: 'slide',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'bars', multiplicand: '347', multiplier: '6' },
};
