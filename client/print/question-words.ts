import type { Prompt } from '../../engine/child.ts';
import { printWords } from '../words/class-print-words.ts';
import { numeral, placeWord, placeWorth, words } from '../words/words.ts';
import type { Asked } from './answers.ts';

/** A question of `walk` so that it can stand on a card, without a mat that marks its square. */
export const cardQuestion = (prompt: Prompt): string => {
  switch (prompt.ask) {
    case 'worth': {
      const [row, column] = prompt.square;
      return printWords('askWorth', { across: placeWord(column), up: placeWord(row) });
    }
    case 'square':
      return printWords('askSquare', { worth: placeWorth(prompt.place) });
    case 'category': {
      const [across, up] = prompt.places;
      return printWords('askCategory', { across: placeWord(across), up: placeWord(up) });
    }
    case 'number':
      return words(prompt.of === 'multiplicand' ? 'askNumberBelow' : 'askNumberBeside');
  }
};

/** Any square of the place is right, so the place is the answer. */
export const replyOf = ({ prompt, answer }: Asked): string => {
  if (typeof answer === 'string') return numeral(answer);
  const place =
    prompt.ask === 'category' ? prompt.places[0] + prompt.places[1] : placeAsked(prompt);
  return printWords('anySquare', { place: placeWord(place) });
};

const placeAsked = (prompt: Prompt): number => (prompt.ask === 'square' ? prompt.place : 0);
