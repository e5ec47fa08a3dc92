import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** The product is the rows side by side, the top row first. */
export const partialsJoined: ErrorPattern = {
  id: 'partial products written one after another',
  skill: 'adding',
  stages: ['paper'],
  sign: 'partialsJoined',
  beliefs: { '': { join: ({ rows }) => rows.flat() } },
  repeat: 'writtenPartials',
  source: DERIVED,
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26', gives: '6942082' },
  silent: { stage: 'paper', multiplicand: '347', multiplier: '6' },
};
