import { digitsOfAmount } from '../../pupils/written.ts';
import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** The sum stops where the upper row ends. */
export const loneDigitsNotBroughtDown: ErrorPattern = {
  id: 'digits without a partner not brought down',
  skill: 'adding',
  stages: ['paper'],
  sign: 'loneDigitsNotBroughtDown',
  beliefs: {
    '': {
      add: ({ digits, carry, last }, right) => {
        const alone = digits.length > 1 && (digits[0] ?? null) === null;
        return alone ? { writes: last && carry > 0 ? digitsOfAmount(carry) : [], carry } : right;
      },
    },
  },
  repeat: 'writtenPartials',
  source: DERIVED,
  fires: { stage: 'paper', multiplicand: '347', multiplier: '96' },
  silent: { stage: 'paper', multiplicand: '347', multiplier: '26' },
};
