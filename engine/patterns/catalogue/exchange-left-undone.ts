import { type ErrorPattern, readIn } from '../pattern.ts';

/** Ten-bars stay, and only the units are read. */
export const exchangeLeftUndone: ErrorPattern = {
  id: 'exchange left undone',
  skill: 'exchanging',
  stages: ['bars', 'record'],
  sign: 'exchangeLeftUndone',
  beliefs: { '': { exchange: () => null } },
  repeat: 'exchange',
  source: readIn('Thorndike, The Psychology of Arithmetic (1922), and teachers’ reports in print'),
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'bars', multiplicand: '312', multiplier: '21' },
};
