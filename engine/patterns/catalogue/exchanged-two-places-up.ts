import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** The square to the left is passed over. */
export const exchangedTwoPlacesUp: ErrorPattern = {
  id: 'exchanged tens put two places up',
  skill: 'exchanging',
  stages: ['bars', 'record'],
  sign: 'exchangedTwoPlacesUp',
  beliefs: { '': { exchange: (_at, right) => right && { ones: right.ones, left: 2 } } },
  repeat: 'exchange',
  source: fromMemory('Attisha and Yazdani (1984), executable catalogue of multiplication errors'),
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'bars', multiplicand: '312', multiplier: '21' },
};
