import type { Beliefs } from '../../pupils/beliefs.ts';
import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** The parameter: the table that the pupil cannot tell from the one below. */
function tableBelow(table: number): Beliefs {
  return {
    fact: ({ a, b }, right) => {
      const other = a === table ? b : a;
      return (a === table || b === table) && other > 1 ? (table - 1) * other : right;
    },
  };
}

/** All facts of one table are answered with the table below. */
export const oneTableShaky: ErrorPattern = {
  id: 'one table answered with its neighbour',
  skill: 'fact',
  stages: ['cells', 'paper'],
  sign: 'oneTableShaky',
  beliefs: {
    '6': tableBelow(6),
    '7': tableBelow(7),
    '8': tableBelow(8),
    '9': tableBelow(9),
  },
  repeat: 'factsByHeart',
  source: fromMemory(
    'Campbell and Graham (1985), Can. J. Psych. 39: answers of a neighbouring operand',
  ),
  fires: { stage: 'paper', multiplicand: '679', multiplier: '86' },
  silent: { stage: 'paper', multiplicand: '345', multiplier: '23' },
};
