import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** Above the bottom row a fact stands one square too far right. */
export const upperProductsOnePlaceTooLow: ErrorPattern = {
  id: 'products of the upper rows one place too low',
  skill: 'place',
  stages: ['cells'],
  sign: 'upperProductsOnePlaceTooLow',
  beliefs: { '': { aside: ({ row }) => (row > 0 ? -1 : 0) } },
  repeat: 'placesOfProducts',
  source: DERIVED,
  fires: { stage: 'cells', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'cells', multiplicand: '347', multiplier: '6' },
};
