import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** The two lowest tiles have changed places. */
export const unitsAndTensSwappedInBuilding: ErrorPattern = {
  id: 'units and tens swapped when the multiplicand is built',
  skill: 'building',
  stages: ['bars', 'record', 'cells'],
  sign: 'unitsAndTensSwappedInBuilding',
  beliefs: {
    '': {
      build: ({ edge, digits }, right) =>
        edge === 'bottom' && digits.length > 1
          ? [digits[1]!, digits[0]!, ...digits.slice(2)]
          : right,
    },
  },
  repeat: 'numberBuilding',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26', gives: '9724' },
  silent: { stage: 'bars', multiplicand: '344', multiplier: '26' },
};
