import { handedOn } from '../../pupils/written.ts';
import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** The last row counts double in the sum. */
export const topRowAddedTwice: ErrorPattern = {
  id: 'top row added twice',
  skill: 'adding',
  stages: ['paper'],
  sign: 'topRowAddedTwice',
  beliefs: {
    '': {
      add: ({ digits, carry, last }, right) =>
        digits.length < 2
          ? right
          : handedOn(
              digits.reduce<number>((sum, digit) => sum + (digit ?? 0), carry) +
                (digits.at(-1) ?? 0),
              last,
            ),
    },
  },
  repeat: 'writtenPartials',
  source: DERIVED,
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26', gives: '15962' },
  silent: { stage: 'paper', multiplicand: '347', multiplier: '6' },
};
