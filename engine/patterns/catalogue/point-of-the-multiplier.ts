import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** The point stands as in the number below. */
export const pointOfTheMultiplier: ErrorPattern = {
  id: 'decimals of the multiplier only',
  skill: 'point',
  stages: ['bars', 'record', 'cells', 'paper'],
  sign: 'pointOfTheMultiplier',
  beliefs: { '': { point: ({ places }) => places[1] } },
  repeat: 'decimalMat',
  source: DERIVED,
  fires: { stage: 'paper', multiplicand: '2.41', multiplier: '1.3' },
  silent: { stage: 'paper', multiplicand: '24', multiplier: '1.3' },
};
