import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** The small figure is always a one. */
export const alwaysHandsOnOne: ErrorPattern = {
  id: 'one handed on, whatever the tens',
  skill: 'partial',
  stages: ['paper'],
  sign: 'alwaysHandsOnOne',
  beliefs: {
    '': {
      column: ({ last }, right) =>
        last || right.carry === 0 ? right : { writes: right.writes, carry: 1 },
    },
  },
  repeat: 'exchange',
  source: fromMemory('Buswell and John (1926), Diagnostic Studies in Arithmetic'),
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26', gives: '8892' },
  silent: { stage: 'paper', multiplicand: '324', multiplier: '13' },
};
