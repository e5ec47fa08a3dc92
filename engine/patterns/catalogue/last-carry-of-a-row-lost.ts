import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** The leading digit of a row is missing. */
export const lastCarryOfARowLost: ErrorPattern = {
  id: 'last carry of a row left off',
  skill: 'partial',
  stages: ['paper'],
  sign: 'lastCarryOfARowLost',
  beliefs: {
    '': {
      column: ({ last }, right) => (last ? { writes: right.writes.slice(0, 1), carry: 0 } : right),
    },
  },
  repeat: 'exchange',
  source: fromMemory('Attisha and Yazdani (1984), executable catalogue of multiplication errors'),
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26', gives: '7022' },
  silent: { stage: 'paper', multiplicand: '312', multiplier: '21' },
};
