import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** Tens times tens are laid as tens. */
export const largerPlaceCounts: ErrorPattern = {
  id: 'place of a product taken as the larger of the two',
  skill: 'place',
  stages: ['bars', 'record'],
  sign: 'largerPlaceCounts',
  beliefs: { '': { aside: ({ row, column }) => Math.max(row, column) - row - column } },
  repeat: 'placesOfProducts',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26', gives: '2902' },
  silent: { stage: 'bars', multiplicand: '347', multiplier: '6' },
};
