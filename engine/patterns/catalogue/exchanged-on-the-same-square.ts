import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** The unit bars stay where the ten-bars lay. */
export const exchangedOnTheSameSquare: ErrorPattern = {
  id: 'exchanged tens laid on their own square',
  skill: 'exchanging',
  stages: ['bars', 'record'],
  sign: 'exchangedOnTheSameSquare',
  beliefs: { '': { exchange: (_at, right) => right && { ones: right.ones, left: 0 } } },
  repeat: 'exchange',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'bars', multiplicand: '312', multiplier: '21' },
};
