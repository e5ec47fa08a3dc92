import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** Passing a ten, counting falls back by ten. */
export const losesATenInCounting: ErrorPattern = {
  id: 'loses a ten in counting',
  skill: 'counting',
  stages: ['bars', 'record'],
  sign: 'losesATenInCounting',
  beliefs: { '': { count: (_at, right) => (right >= 10 ? right - 10 : right) } },
  repeat: 'exchange',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'bars', multiplicand: '312', multiplier: '21' },
};
