import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** The units tile of the multiplier lies on top. */
export const multiplierBackToFront: ErrorPattern = {
  id: 'multiplier laid back to front',
  skill: 'building',
  stages: ['bars', 'record', 'cells'],
  sign: 'multiplierBackToFront',
  beliefs: {
    '': { build: ({ edge, digits }, right) => (edge === 'right' ? [...digits].reverse() : right) },
  },
  repeat: 'numberBuilding',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26', gives: '21514' },
  silent: { stage: 'bars', multiplicand: '347', multiplier: '22' },
};
