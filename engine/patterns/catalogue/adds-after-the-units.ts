import { handedOn } from '../../pupils/written.ts';
import { type ErrorPattern, readIn } from '../pattern.ts';

/** Only the units digit is multiplied; the others take the carry and come down. */
export const addsAfterTheUnits: ErrorPattern = {
  id: 'adds after the units digit',
  skill: 'partial',
  stages: ['paper'],
  sign: 'addsAfterTheUnits',
  beliefs: {
    '': {
      column: ({ a, carry, column, last }, right) =>
        column > 0 ? handedOn(a + carry, last) : right,
    },
  },
  repeat: 'writtenAlgorithm',
  source: readIn('Thorndike, The Psychology of Arithmetic (1922), and teachers’ reports in print'),
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26', gives: '3922' },
  silent: { stage: 'paper', multiplicand: '347', multiplier: '1' },
};
