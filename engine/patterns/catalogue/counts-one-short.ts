import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** Counting ends one bead early. */
export const countsOneShort: ErrorPattern = {
  id: 'counts one bead short',
  skill: 'counting',
  stages: ['bars', 'record'],
  sign: 'countsOneShort',
  beliefs: { '': { count: (_at, right) => Math.max(0, right - 1) } },
  repeat: 'exchange',
  source: fromMemory('Buswell and John (1926), Diagnostic Studies in Arithmetic'),
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'bars', multiplicand: '0', multiplier: '26' },
};
