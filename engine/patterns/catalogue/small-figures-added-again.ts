import { handedOn } from '../../pupils/written.ts';
import { DERIVED, type ErrorPattern } from '../pattern.ts';

/** The carries noted over the rows are added with the rows. */
export const smallFiguresAddedAgain: ErrorPattern = {
  id: 'small figures of the rows added again',
  skill: 'adding',
  stages: ['paper'],
  sign: 'smallFiguresAddedAgain',
  beliefs: {
    '': {
      add: ({ digits, carry, notes, last }, right) => {
        const again = notes.reduce((sum, note) => sum + note, 0);
        const sum = digits.reduce<number>((total, digit) => total + (digit ?? 0), carry);
        return again === 0 ? right : handedOn(sum + again, last);
      },
    },
  },
  repeat: 'writtenPartials',
  source: DERIVED,
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26' },
  silent: { stage: 'paper', multiplicand: '312', multiplier: '21' },
};
