import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** The first bead of the next bar is counted twice. */
export const countsOneOver: ErrorPattern = {
  id: 'counts one bead over',
  skill: 'counting',
  stages: ['bars', 'record'],
  sign: 'countsOneOver',
  beliefs: { '': { count: (_at, right) => right + 1 } },
  repeat: 'exchange',
  source: fromMemory('Buswell and John (1926), Diagnostic Studies in Arithmetic'),
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'bars', multiplicand: '0', multiplier: '26' },
};
