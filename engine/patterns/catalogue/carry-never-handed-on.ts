import { digitsOfAmount } from '../../pupils/written.ts';
import { type ErrorPattern, readIn } from '../pattern.ts';

/** Every column keeps its units only; the last product stands whole. */
export const carryNeverHandedOn: ErrorPattern = {
  id: 'carry never handed on',
  skill: 'partial',
  stages: ['paper'],
  sign: 'carryNeverHandedOn',
  beliefs: {
    '': {
      column: ({ fact, last }) => ({ writes: last ? digitsOfAmount(fact) : [fact % 10], carry: 0 }),
    },
  },
  repeat: 'exchange',
  source: readIn('Thorndike, The Psychology of Arithmetic (1922), and teachers’ reports in print'),
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26', gives: '8682' },
  silent: { stage: 'paper', multiplicand: '312', multiplier: '21' },
};
