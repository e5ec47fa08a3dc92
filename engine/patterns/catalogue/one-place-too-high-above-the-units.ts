import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** Tens times tens are laid as thousands. */
export const onePlaceTooHighAboveTheUnits: ErrorPattern = {
  id: 'product one place too high where both digits are above the units',
  skill: 'place',
  stages: ['bars', 'record', 'cells'],
  sign: 'onePlaceTooHighAboveTheUnits',
  beliefs: { '': { aside: ({ row, column }) => (row > 0 && column > 0 ? 1 : 0) } },
  repeat: 'placesOfProducts',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26', gives: '70222' },
  silent: { stage: 'bars', multiplicand: '347', multiplier: '6' },
};
