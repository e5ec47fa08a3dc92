import { type ErrorPattern, readIn } from '../pattern.ts';

/** The tens row is said as if it were a units row. */
export const rowSaidWithoutItsZeros: ErrorPattern = {
  id: 'row said without its zeros',
  skill: 'saying',
  stages: ['bars'],
  sign: 'rowSaidWithoutItsZeros',
  beliefs: { '': { shift: () => 0 } },
  repeat: 'recording',
  source: readIn('Thorndike, The Psychology of Arithmetic (1922), and teachers’ reports in print'),
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'bars', multiplicand: '347', multiplier: '6' },
};
