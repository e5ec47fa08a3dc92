import { type ErrorPattern, fromMemory } from '../pattern.ts';

/** Three hundred and four is laid as a three, two zeros and a four. */
export const numberBuiltAsSpoken: ErrorPattern = {
  id: 'number built as it is spoken',
  skill: 'building',
  stages: ['bars', 'record', 'cells'],
  sign: 'numberBuiltAsSpoken',
  beliefs: {
    '': {
      build: ({ edge, digits }, right) => {
        if (edge === 'right') return right;
        const spoken = digits.flatMap((digit, place) =>
          digit === 0 ? [] : [...Array.from({ length: place }, () => 0), digit],
        );
        return spoken.length === 0 ? right : spoken;
      },
    },
  },
  repeat: 'numberBuilding',
  source: fromMemory('Cox (1975), J. Res. Math. Educ. 6: systematic errors in multiplication'),
  fires: { stage: 'bars', multiplicand: '304', multiplier: '26', gives: '78104' },
  silent: { stage: 'bars', multiplicand: '7', multiplier: '26' },
};
