import { type ErrorPattern, readIn } from '../pattern.ts';

/** One single row, each digit with the one under it, the last one again and again. */
export const straightDownOnly: ErrorPattern = {
  id: 'digits multiplied straight down only',
  skill: 'partial',
  stages: ['paper'],
  sign: 'straightDownOnly',
  beliefs: {
    '': {
      works: ({ row }) => row === 0,
      partner: ({ column, up }) => up[Math.min(column, up.length - 1)] ?? 0,
    },
  },
  repeat: 'placesOfProducts',
  source: readIn('Thorndike, The Psychology of Arithmetic (1922), and teachers’ reports in print'),
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26', gives: '722' },
  silent: { stage: 'paper', multiplicand: '347', multiplier: '6' },
};
