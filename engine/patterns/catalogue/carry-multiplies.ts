import { handedOn } from '../../pupils/written.ts';
import { type ErrorPattern, readIn } from '../pattern.ts';

/** Where a small figure stands, it multiplies in place of the multiplier’s digit. */
export const carryMultiplies: ErrorPattern = {
  id: 'next digit multiplied by the carry',
  skill: 'partial',
  stages: ['paper'],
  sign: 'carryMultiplies',
  beliefs: {
    '': { column: ({ a, carry, last }, right) => (carry > 0 ? handedOn(a * carry, last) : right) },
  },
  repeat: 'writtenAlgorithm',
  source: readIn('Thorndike, The Psychology of Arithmetic (1922), and teachers’ reports in print'),
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26', gives: '6802' },
  silent: { stage: 'paper', multiplicand: '312', multiplier: '21' },
};
