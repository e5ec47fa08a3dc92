import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** A row stands as many squares again too far left. */
export const rowsLaidTwiceAsFar: ErrorPattern = {
  id: 'row laid twice as far left',
  skill: 'laying',
  stages: ['bars', 'record', 'cells'],
  sign: 'rowsLaidTwiceAsFar',
  beliefs: { '': { aside: ({ row }) => row } },
  repeat: 'layingARow',
  source: DERIVED,
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26', gives: '71482' },
  silent: { stage: 'bars', multiplicand: '347', multiplier: '6' },
};
