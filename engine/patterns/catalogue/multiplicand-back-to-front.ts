import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** The units tile lies where the highest place should be. */
export const multiplicandBackToFront: ErrorPattern = {
  id: 'multiplicand laid back to front',
  skill: 'building',
  stages: ['bars', 'record', 'cells'],
  sign: 'multiplicandBackToFront',
  beliefs: {
    '': { build: ({ edge, digits }, right) => (edge === 'bottom' ? [...digits].reverse() : right) },
  },
  repeat: 'numberBuilding',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26', gives: '19318' },
  silent: { stage: 'bars', multiplicand: '313', multiplier: '26' },
};
