import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** A zero of the multiplicand writes zero, and the small figure is gone. */
export const carryLostAtAZero: ErrorPattern = {
  id: 'carry thrown away at a zero',
  skill: 'partial',
  stages: ['paper'],
  sign: 'carryLostAtAZero',
  beliefs: { '': { column: ({ a }, right) => (a === 0 ? { writes: [0], carry: 0 } : right) } },
  repeat: 'writtenAlgorithm',
  source: fromMemory('Attisha and Yazdani (1984), executable catalogue of multiplication errors'),
  fires: { stage: 'paper', multiplicand: '306', multiplier: '24', gives: '7224' },
  silent: { stage: 'paper', multiplicand: '347', multiplier: '26' },
};
