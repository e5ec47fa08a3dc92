import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** Only the bottom row is read, the others are not slid. */
export const upperRowsLeftLying: ErrorPattern = {
  id: 'upper rows left lying',
  skill: 'sliding',
  stages: ['bars', 'record'],
  sign: 'upperRowsLeftLying',
  beliefs: { '': { slide: () => null } },
  repeat: 'slide',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26', gives: '2082' },
  silent: { stage: 'bars', multiplicand: '347', multiplier: '6' },
};
