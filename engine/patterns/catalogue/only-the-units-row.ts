import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** The other digits of the multiplier are left alone. */
export const onlyTheUnitsRow: ErrorPattern = {
  id: 'only the units row worked',
  skill: 'partial',
  stages: ['bars', 'record', 'cells', 'paper'],
  sign: 'onlyTheUnitsRow',
  beliefs: { '': { works: ({ row }) => row === 0 } },
  repeat: 'recording',
  source: fromMemory('Buswell and John (1926), Diagnostic Studies in Arithmetic'),
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26', gives: '2082' },
  silent: { stage: 'paper', multiplicand: '347', multiplier: '6' },
};
