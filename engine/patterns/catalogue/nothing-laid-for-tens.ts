import { type ErrorPattern, readIn } from '../pattern.ts';

/** Ten-bars are cleared away, and that is all. */
export const nothingLaidForTens: ErrorPattern = {
  id: 'nothing laid for the ten-bars',
  skill: 'exchanging',
  stages: ['bars', 'record'],
  sign: 'nothingLaidForTens',
  beliefs: { '': { exchange: (_at, right) => right && { ones: 0, left: right.left } } },
  repeat: 'exchange',
  source: readIn('Thorndike, The Psychology of Arithmetic (1922), and teachers’ reports in print'),
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'bars', multiplicand: '312', multiplier: '21' },
};
