import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** A seven and a six lie where six sevens should. */
export const bothBarsLaidOnce: ErrorPattern = {
  id: 'one bar for each digit laid',
  skill: 'laying',
  stages: ['bars', 'record'],
  sign: 'bothBarsLaidOnce',
  beliefs: {
    '': {
      lay: ({ kind, times }, right) =>
        kind > 0 && times > 0
          ? [
              { kind, count: 1 },
              { kind: times, count: 1 },
            ]
          : right,
    },
  },
  repeat: 'layingARow',
  source: fromMemory(
    'Campbell and Graham (1985), Can. J. Psych. 39: answers of a neighbouring operand',
  ),
  fires: { stage: 'bars', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'bars', multiplicand: '0', multiplier: '26' },
};
