import { numberInWords } from '../../words/number-words.ts';
import { sentence } from '../says.ts';
import type { Tool } from '../tool.ts';
import { tiles } from './tiles.ts';

/** The numbers are told in words: which digit goes where is for the child to find. */
export const tilesInWords: Tool = {
  ...tiles,
  says: ({ work }) => {
    const { multiplicand, multiplier } = work.problem;
    return sentence('nextTiles', {
      multiplicand: numberInWords(multiplicand.text),
      multiplier: numberInWords(multiplier.text),
    });
  },
};
