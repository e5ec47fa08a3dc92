import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** The highest place is written as the units. */
export const readBackToFront: ErrorPattern = {
  id: 'product read back to front',
  skill: 'reading',
  stages: ['bars', 'record'],
  sign: 'readBackToFront',
  beliefs: { '': { read: ({ of }, right) => (of === 'product' ? [...right].reverse() : right) } },
  repeat: 'numberBuilding',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'bars', multiplicand: '11', multiplier: '11' },
};
