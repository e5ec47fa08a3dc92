import { type ErrorPattern, readIn } from '../pattern.ts';

/** After a zero in the multiplier the next row stands one place too far right. */
export const zeroOfTheMultiplierPassedOver: ErrorPattern = {
  id: 'zero of the multiplier passed over with its place',
  skill: 'placeholder',
  stages: ['paper'],
  sign: 'zeroOfTheMultiplierPassedOver',
  beliefs: {
    '': { shift: ({ row, up }) => up.slice(0, row).filter((digit) => digit !== 0).length },
  },
  repeat: 'recording',
  source: readIn('Thorndike, The Psychology of Arithmetic (1922), and teachers’ reports in print'),
  fires: { stage: 'paper', multiplicand: '213', multiplier: '304', gives: '7242' },
  silent: { stage: 'paper', multiplicand: '347', multiplier: '26' },
};
