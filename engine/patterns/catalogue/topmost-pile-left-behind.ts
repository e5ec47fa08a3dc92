import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** The highest square on the left is not slid. */
export const topmostPileLeftBehind: ErrorPattern = {
  id: 'outermost pile left behind',
  skill: 'sliding',
  stages: ['bars', 'record'],
  sign: 'topmostPileLeftBehind',
  beliefs: { '': { slide: ({ outermost }, right) => (outermost ? null : right) } },
  repeat: 'slide',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'bars', multiplicand: '347', multiplier: '6' },
};
