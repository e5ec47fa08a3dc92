import type { Square, Suggestion, Work } from '../../engine/child.ts';
import { numbersOf } from '../words/words.ts';
import { toolFor } from './moves.ts';
import { type Sentence, sentence } from './says.ts';
import type { At } from './tool.ts';

const hasNumbers = ({ problem }: Work): boolean => problem.multiplier.digits.length > 0;

const rowOf = ({ action, say }: Suggestion): number => {
  if (typeof say.values.row === 'number') return say.values.row;
  if ('square' in action) return action.square[0];
  if (action.do === 'exchange') return action.from[0];
  if (action.do === 'finish') return Number(action.what.split(':')[1] ?? 0);
  return 0;
};

/** Where the page may not tell what is next: the task alone. Questions are the task themselves. */
const task = (at: At): Sentence => {
  if (at.work.problem.prompts.length > 0) return at.tool.says(at, null, 0);
  return hasNumbers(at.work)
    ? sentence('taskOnly', numbersOf(at.work.problem))
    : sentence('openTask');
};

/**
 * The one sentence: what is next, in the trade's words. It names the move and the row, never the square or the number:
 * those are hints. A move that would mend something is not told before the mat has answered.
 */
export const nextSentence = (at: At): Sentence => {
  const { work, next } = at;
  if (work.finished.problem) return sentence('refusedFinished');
  if (at.desk.held?.what === 'tens') return sentence('carriedTens');
  if (work.problem.policy.control === 'silent' || next === null) return task(at);
  if (at.tool.id === 'walk' || at.tool.id === 'tell') return at.tool.says(at, next, 0);
  if (work.lifted.length > 0) return sentence('lookAgain');
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
      return (toolFor(at.tools, next) ?? at.tool).says(at, next, row);
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
