import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** A row stands as many places again too far left. */
export const rowMovedTwiceAsFar: ErrorPattern = {
  id: 'row moved twice as far',
  skill: 'placeholder',
  stages: ['paper', 'record'],
  sign: 'rowMovedTwiceAsFar',
  beliefs: { '': { shift: ({ row }) => 2 * row } },
  repeat: 'recording',
  source: DERIVED,
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26', gives: '71482' },
  silent: { stage: 'paper', multiplicand: '347', multiplier: '6' },
};
