import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** Each square lacks one of its bars. */
export const oneBarTooFew: ErrorPattern = {
  id: 'one bar too few laid',
  skill: 'laying',
  stages: ['bars', 'record'],
  sign: 'oneBarTooFew',
  beliefs: {
    '': {
      lay: (_at, right) =>
        right.flatMap(({ kind, count }) => (count > 1 ? [{ kind, count: count - 1 }] : [])),
    },
  },
  repeat: 'layingARow',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'bars', multiplicand: '0', multiplier: '26' },
};
