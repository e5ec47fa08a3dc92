import { handedOn } from '../../pupils/written.ts';
import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** Where the rows should be added their digits are multiplied. */
export const columnsMultiplied: ErrorPattern = {
  id: 'digits of a column multiplied in adding',
  skill: 'adding',
  stages: ['paper'],
  sign: 'columnsMultiplied',
  beliefs: {
    '': {
      add: ({ digits, carry, last }, right) => {
        const there = digits.flatMap((digit) => (digit === null ? [] : [digit]));
        if (there.length < 2) return right;
        return handedOn(there.reduce((product, digit) => product * digit, 1) + carry, last);
      },
    },
  },
  repeat: 'writtenPartials',
  source: DERIVED,
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'paper', multiplicand: '347', multiplier: '6' },
};
