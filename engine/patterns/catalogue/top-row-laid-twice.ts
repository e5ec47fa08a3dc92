import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** The highest row has twice the bars. */
export const topRowLaidTwice: ErrorPattern = {
  id: 'top row laid twice',
  skill: 'laying',
  stages: ['bars', 'record'],
  sign: 'topRowLaidTwice',
  beliefs: {
    '': {
      lay: ({ row, up }, right) =>
        up.length > 1 && row === up.length - 1
          ? right.map(({ kind, count }) => ({ kind, count: 2 * count }))
          : right,
    },
  },
  repeat: 'recording',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26', gives: '15962' },
  silent: { stage: 'bars', multiplicand: '347', multiplier: '6' },
};
