import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** Piles come down one square left of their diagonal. */
export const slidTooFarLeft: ErrorPattern = {
  id: 'slid one square too far left',
  skill: 'sliding',
  stages: ['bars', 'record'],
  sign: 'slidTooFarLeft',
  beliefs: { '': { slide: () => 1 } },
  repeat: 'slide',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'bars', multiplicand: '347', multiplier: '6' },
};
