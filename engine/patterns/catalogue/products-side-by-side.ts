import { digitsOfAmount } from '../../pupils/written.ts';
import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** Each product is written out whole beside the one before. */
export const productsSideBySide: ErrorPattern = {
  id: 'products written side by side',
  skill: 'partial',
  stages: ['paper'],
  sign: 'productsSideBySide',
  beliefs: { '': { column: ({ fact }) => ({ writes: digitsOfAmount(fact), carry: 0 }) } },
  repeat: 'exchange',
  source: fromMemory('Buswell and John (1926), Diagnostic Studies in Arithmetic'),
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26', gives: '250582' },
  silent: { stage: 'paper', multiplicand: '312', multiplier: '21' },
};
