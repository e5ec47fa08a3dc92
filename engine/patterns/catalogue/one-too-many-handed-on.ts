import { digitsOfAmount } from '../../pupils/written.ts';
import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** The small figure is one too large. */
export const oneTooManyHandedOn: ErrorPattern = {
  id: 'one more handed on than there are tens',
  skill: 'partial',
  stages: ['paper'],
  sign: 'oneTooManyHandedOn',
  beliefs: {
    '': {
      column: ({ fact, carry, last }, right) => {
        const value = fact + carry;
        if (value < 10) return right;
        const tens = Math.floor(value / 10) + 1;
        return last
          ? { writes: [value % 10, ...digitsOfAmount(tens)], carry: 0 }
          : { writes: [value % 10], carry: tens };
      },
    },
  },
  repeat: 'exchange',
  source: DERIVED,
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26', gives: '11232' },
  silent: { stage: 'paper', multiplicand: '312', multiplier: '21' },
};
