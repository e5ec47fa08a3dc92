import { type ErrorPattern, readIn } from '../pattern.ts';

/** Every row begins at the units place. */
export const rowNotMovedOver: ErrorPattern = {
  id: 'row not moved over',
  skill: 'placeholder',
  stages: ['paper', 'record'],
  sign: 'rowNotMovedOver',
  beliefs: { '': { shift: () => 0 } },
  repeat: 'recording',
  source: readIn('Thorndike, The Psychology of Arithmetic (1922), and teachers’ reports in print'),
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26', gives: '2776' },
  silent: { stage: 'paper', multiplicand: '347', multiplier: '6' },
};
