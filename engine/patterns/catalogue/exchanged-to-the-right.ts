import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** The unit bars go to the lower place. */
export const exchangedToTheRight: ErrorPattern = {
  id: 'exchanged tens put to the right',
  skill: 'exchanging',
  stages: ['bars', 'record'],
  sign: 'exchangedToTheRight',
  beliefs: { '': { exchange: (_at, right) => right && { ones: right.ones, left: -1 } } },
  repeat: 'exchange',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'bars', multiplicand: '312', multiplier: '21' },
};
