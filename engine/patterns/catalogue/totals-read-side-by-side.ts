import { digitsOfAmount } from '../../pupils/written.ts';
import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** Nothing is exchanged; the product is a chain of two-digit numbers. */
export const totalsReadSideBySide: ErrorPattern = {
  id: 'totals read off side by side',
  skill: 'reading',
  stages: ['bars', 'record'],
  sign: 'totalsReadSideBySide',
  beliefs: {
    '': {
      exchange: () => null,
      read: ({ piles, of }, right) =>
        of === 'product'
          ? piles.slice(0, piles.findLastIndex((beads) => beads > 0) + 1).flatMap(digitsOfAmount)
          : right,
    },
  },
  repeat: 'slide',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26', gives: '6263842' },
  silent: { stage: 'bars', multiplicand: '312', multiplier: '21' },
};
