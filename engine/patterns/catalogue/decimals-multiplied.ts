import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** The two numbers of decimals are multiplied, not added. */
export const decimalsMultiplied: ErrorPattern = {
  id: 'numbers of decimals multiplied',
  skill: 'point',
  stages: ['bars', 'record', 'cells', 'paper'],
  sign: 'decimalsMultiplied',
  beliefs: { '': { point: ({ places }) => places[0] * places[1] } },
  repeat: 'decimalMat',
  source: DERIVED,
  fires: { stage: 'paper', multiplicand: '2.145', multiplier: '1.362' },
  silent: { stage: 'paper', multiplicand: '12', multiplier: '34' },
};
