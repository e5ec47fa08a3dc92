import type { Square, Suggestion, Work } from '../../engine/child.ts';
import type { Values } from '../words/values.ts';
import { numeral, type WordId } from '../words/words.ts';
import { type Tool, toolFor } from './moves.ts';

/** A sentence by id with its values: what the page shows and reads aloud. */
export interface Sentence {
  readonly id: WordId;
  readonly values: Values;
}

export const sentence = (id: WordId, values: Values = {}): Sentence => ({ id, values });

const numbersOf = ({ problem }: Work): Values => ({
  multiplicand: numeral(problem.multiplicand.text),
  multiplier: numeral(problem.multiplier.text),
});

/** Once nothing is left to slide, counting means the bottom row as a whole. */
const combining = ({ steps }: Work): boolean => {
  const slides = steps.filter(({ id }) => id.startsWith('slid:'));
  return slides.length > 0 && slides.every(({ status }) => status !== 'open');
};

const rowOf = ({ action }: Suggestion): number => {
  if ('square' in action) return action.square[0];
  if (action.do === 'exchange') return action.from[0];
  if (action.do === 'say' && 'row' in action) return action.row;
  if (action.do === 'finish') return Number(action.what.split(':')[1] ?? 0);
  return 0;
};

const byTool = (tool: Tool, row: number, work: Work): Sentence => {
  switch (tool) {
    case 'tiles':
      return sentence('nextTiles', numbersOf(work));
    case 'lay':
      return sentence('nextLay', { row });
    case 'count':
      return combining(work) ? sentence('nextCountBottom') : sentence('nextCount', { row });
    case 'row':
      return sentence('nextSay', { row });
    case 'slide':
      return sentence('nextSlide');
    case 'read':
      return sentence('nextRead');
  }
};

/**
 * The one sentence: what is next, in the trade's words. It names the move and the row, never the square or the number:
 * those are hints. A move that would mend something is not told before the mat has answered.
 */
export const nextSentence = (work: Work, next: Suggestion | null, tool: Tool): Sentence => {
  if (work.finished.problem) return sentence('refusedFinished');
  if (work.problem.policy.control === 'silent') return sentence('taskOnly', numbersOf(work));
  if (work.lifted.length > 0) return sentence('lookAgain');
  if (next === null) return sentence('taskOnly', numbersOf(work));
  const row = rowOf(next);
  switch (next.say.key) {
    case 'finishRow':
      return sentence('nextRowDone', { row });
    case 'point':
      return sentence('nextPoint');
    case 'finishProduct':
      return sentence('nextProductDone');
    case 'finishProblem':
      return sentence('nextProblemDone');
    default:
      return byTool(toolFor(next.say.key) ?? tool, row, work);
  }
};

/** In an opened square the sentence is about its pile. */
export const openSentence = (work: Work, [row, column]: Square): Sentence => {
  const bars = work.position.piles[row]?.[column]?.bars ?? [];
  const count = bars.reduce((sum, many) => sum + many, 0);
  if (work.lifted.length > 0) return sentence('lookAgain');
  if (count === 0) return sentence('openedEmpty');
  if ((bars[9] ?? 0) > 0) return sentence('openedTens');
  return sentence(count === 1 ? 'openedDone' : 'openedSentence');
};
