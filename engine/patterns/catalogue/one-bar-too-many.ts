import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** The bar that is named is laid as the first, and counting goes on from there. */
export const oneBarTooMany: ErrorPattern = {
  id: 'one bar too many laid',
  skill: 'laying',
  stages: ['bars', 'record'],
  sign: 'oneBarTooMany',
  beliefs: {
    '': { lay: (_at, right) => right.map(({ kind, count }) => ({ kind, count: count + 1 })) },
  },
  repeat: 'layingARow',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'bars', multiplicand: '0', multiplier: '26' },
};
