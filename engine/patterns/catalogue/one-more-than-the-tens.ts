import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** Four ten-bars go, five unit bars come. */
export const oneMoreThanTheTens: ErrorPattern = {
  id: 'one more laid than there were ten-bars',
  skill: 'exchanging',
  stages: ['bars', 'record'],
  sign: 'oneMoreThanTheTens',
  beliefs: { '': { exchange: ({ tens }, right) => right && { ones: tens + 1, left: right.left } } },
  repeat: 'exchange',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'bars', multiplicand: '312', multiplier: '21' },
};
