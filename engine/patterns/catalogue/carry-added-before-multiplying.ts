import { handedOn } from '../../pupils/written.ts';
import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** The small figure joins the digit first, then both are multiplied. */
export const carryAddedBeforeMultiplying: ErrorPattern = {
  id: 'carry added before multiplying',
  skill: 'partial',
  stages: ['paper'],
  sign: 'carryAddedBeforeMultiplying',
  beliefs: { '': { column: ({ a, b, carry, last }) => handedOn((a + carry) * b, last) } },
  repeat: 'writtenAlgorithm',
  source: fromMemory('Ashlock, Error Patterns in Computation (editions 1972–2010)'),
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26', gives: '12322' },
  silent: { stage: 'paper', multiplicand: '312', multiplier: '21' },
};
