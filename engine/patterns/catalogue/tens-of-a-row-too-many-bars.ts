import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** All squares of a row get the bars of one digit. */
export const tensOfARowTooManyBars: ErrorPattern = {
  id: 'bar of the highest digit laid everywhere',
  skill: 'laying',
  stages: ['bars', 'record'],
  sign: 'tensOfARowTooManyBars',
  beliefs: {
    '': {
      lay: ({ across }, right) => right.map(({ count }) => ({ kind: across.at(-1) || 1, count })),
    },
  },
  repeat: 'layingARow',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'bars', multiplicand: '333', multiplier: '26' },
};
