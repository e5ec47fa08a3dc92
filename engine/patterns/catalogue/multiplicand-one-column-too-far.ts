import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** The corner of the bottom edge stays empty. */
export const multiplicandOneColumnTooFar: ErrorPattern = {
  id: 'multiplicand laid one column too far left',
  skill: 'building',
  stages: ['bars', 'record', 'cells'],
  sign: 'multiplicandOneColumnTooFar',
  beliefs: {
    '': {
      build: ({ edge, digits }, right) =>
        edge === 'bottom' && digits.length > 1 ? [null, ...digits] : right,
    },
  },
  repeat: 'numberBuilding',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26', gives: '90220' },
  silent: { stage: 'bars', multiplicand: '7', multiplier: '26' },
};
