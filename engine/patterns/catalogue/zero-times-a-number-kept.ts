import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** With a zero the other digit is taken over. */
export const zeroTimesANumberKept: ErrorPattern = {
  id: 'zero times a number makes the number',
  skill: 'fact',
  stages: ['bars', 'record', 'cells', 'paper'],
  sign: 'zeroTimesANumberKept',
  beliefs: { '': { fact: ({ a, b }, right) => (a === 0 || b === 0 ? a + b : right) } },
  repeat: 'factsByHeart',
  source: fromMemory('Buswell and John (1926), Diagnostic Studies in Arithmetic'),
  fires: { stage: 'paper', multiplicand: '304', multiplier: '26', gives: '8164' },
  silent: { stage: 'paper', multiplicand: '347', multiplier: '26' },
};
