import { handedOn } from '../../pupils/written.ts';
import { type ErrorPattern, readIn } from '../pattern.ts';

/** The small figure is added as tens of its own column. */
export const carryTenTimesItsSize: ErrorPattern = {
  id: 'carry added at ten times its size',
  skill: 'partial',
  stages: ['paper'],
  sign: 'carryTenTimesItsSize',
  beliefs: {
    '': {
      column: ({ fact, carry, last }, right) =>
        carry > 0 ? handedOn(fact + 10 * carry, last) : right,
    },
  },
  repeat: 'exchange',
  source: readIn('Thorndike, The Psychology of Arithmetic (1922), and teachers’ reports in print'),
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26', gives: '24682' },
  silent: { stage: 'paper', multiplicand: '312', multiplier: '21' },
};
