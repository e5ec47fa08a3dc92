import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** Four ten-bars go, one unit bar comes. */
export const oneLaidForAllTens: ErrorPattern = {
  id: 'one laid for all the ten-bars',
  skill: 'exchanging',
  stages: ['bars', 'record'],
  sign: 'oneLaidForAllTens',
  beliefs: { '': { exchange: (_at, right) => right && { ones: 1, left: right.left } } },
  repeat: 'exchange',
  source: fromMemory('Buswell and John (1926), Diagnostic Studies in Arithmetic'),
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'bars', multiplicand: '324', multiplier: '13' },
};
