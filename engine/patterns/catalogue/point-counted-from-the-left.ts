import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** As many digits as there should be decimals stand before the point. */
export const pointCountedFromTheLeft: ErrorPattern = {
  id: 'decimals counted off from the left',
  skill: 'point',
  stages: ['bars', 'record', 'cells', 'paper'],
  sign: 'pointCountedFromTheLeft',
  beliefs: { '': { point: ({ places, written }) => written.length - places[0] - places[1] } },
  repeat: 'decimalMat',
  source: fromMemory(
    'Hiebert and Wearne (1985), J. Res. Math. Educ. 16: decimals as rules of symbols',
  ),
  fires: { stage: 'paper', multiplicand: '4.05', multiplier: '0.6', gives: '243.0' },
  silent: { stage: 'paper', multiplicand: '12', multiplier: '34' },
};
