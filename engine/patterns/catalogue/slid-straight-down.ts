import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** Piles come down their column, not their diagonal. */
export const slidStraightDown: ErrorPattern = {
  id: 'slid straight down',
  skill: 'sliding',
  stages: ['bars', 'record'],
  sign: 'slidStraightDown',
  beliefs: { '': { slide: ({ down }) => -down } },
  repeat: 'slide',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26', gives: '2776' },
  silent: { stage: 'bars', multiplicand: '347', multiplier: '6' },
};
