import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** A zero of the multiplicand writes nothing, and the row moves together. */
export const zeroClosedUp: ErrorPattern = {
  id: 'row closed up over a zero',
  skill: 'placeholder',
  stages: ['paper'],
  sign: 'zeroClosedUp',
  beliefs: { '': { column: ({ a, carry }, right) => (a === 0 ? { writes: [], carry } : right) } },
  repeat: 'placesOfProducts',
  source: fromMemory('Cox (1975), J. Res. Math. Educ. 6: systematic errors in multiplication'),
  fires: { stage: 'paper', multiplicand: '304', multiplier: '26', gives: '884' },
  silent: { stage: 'paper', multiplicand: '347', multiplier: '26' },
};
