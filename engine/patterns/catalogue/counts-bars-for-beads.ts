import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** Six sevens are counted as six. */
export const countsBarsForBeads: ErrorPattern = {
  id: 'counts bars instead of beads',
  skill: 'counting',
  stages: ['bars', 'record'],
  sign: 'countsBarsForBeads',
  beliefs: {
    '': {
      count: ({ bars }) => bars.slice(0, 9).reduce((sum, count) => sum + count, 0) + 10 * bars[9]!,
    },
  },
  repeat: 'exchange',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'bars', multiplicand: '111', multiplier: '11' },
};
