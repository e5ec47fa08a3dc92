import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** In the sum the tens digit is written and the units digit carried. */
export const sumTensWritten: ErrorPattern = {
  id: 'tens of a column written and units handed on in adding',
  skill: 'adding',
  stages: ['paper', 'cells'],
  sign: 'sumTensWritten',
  beliefs: {
    '': {
      add: ({ digits, carry, last }, right) => {
        const sum = digits.reduce<number>((total, digit) => total + (digit ?? 0), carry);
        if (last || sum < 10) return right;
        return { writes: [Math.floor(sum / 10) % 10], carry: sum % 10 };
      },
    },
  },
  repeat: 'writtenPartials',
  source: DERIVED,
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'paper', multiplicand: '312', multiplier: '21' },
};
