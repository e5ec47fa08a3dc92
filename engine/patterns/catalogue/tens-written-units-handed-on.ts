import { type ErrorPattern, readIn } from '../pattern.ts';

/** Of a two-digit product the tens digit is written and the units digit carried. */
export const tensWrittenUnitsHandedOn: ErrorPattern = {
  id: 'tens written and units handed on',
  skill: 'partial',
  stages: ['paper'],
  sign: 'tensWrittenUnitsHandedOn',
  beliefs: {
    '': {
      column: ({ fact, carry, last }, right) => {
        const value = fact + carry;
        if (last || value < 10) return right;
        return { writes: [Math.floor(value / 10)], carry: value % 10 };
      },
    },
  },
  repeat: 'exchange',
  source: readIn('Thorndike, The Psychology of Arithmetic (1922), and teachers’ reports in print'),
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26', gives: '10534' },
  silent: { stage: 'paper', multiplicand: '312', multiplier: '21' },
};
