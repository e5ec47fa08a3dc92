import { type ErrorPattern, readIn } from '../pattern.ts';

/** Twenty-four is written as forty-two. */
export const factDigitsSwapped: ErrorPattern = {
  id: 'digits of a fact swapped',
  skill: 'fact',
  stages: ['cells', 'paper'],
  sign: 'factDigitsSwapped',
  beliefs: {
    '': {
      fact: (_at, right) => (right < 10 ? right : Number([...String(right)].reverse().join(''))),
    },
  },
  repeat: 'factsByHeart',
  source: readIn('Thorndike, The Psychology of Arithmetic (1922), and teachers’ reports in print'),
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26', gives: '15754' },
  silent: { stage: 'paper', multiplicand: '312', multiplier: '21' },
};
