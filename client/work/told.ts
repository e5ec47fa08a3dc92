import type { Action, RefusalCode, Work } from '../../engine/child.ts';
import { placeOf } from '../../engine/child.ts';
import { placeWord, rowWord, words } from '../words/words.ts';
import { type Sentence, sentence } from './says.ts';

/** What the last undo took back. */
const undone = ({ log }: Work): Action => {
  let undos = 0;
  return log.findLast(({ action, refused }) => {
    if (refused !== undefined || ['check', 'hint', 'finish'].includes(action.do)) return false;
    undos += action.do === 'undo' ? 1 : -1;
    return undos === 0;
  })!.action;
};

/** What has just happened, in a few words for ears (role=status). */
export const told = (work: Work, action: Action): string => {
  const { mat } = work.problem;
  switch (action.do) {
    case 'layTile':
      return words('didTile', { digit: action.digit });
    case 'layBars':
      return words('didLay', {
        bars: words('someBars', { count: action.count, kind: action.kind }),
      });
    case 'liftBars':
    case 'liftTile':
      return words('didLift');
    case 'count':
      return words('didCount', { total: action.total });
    case 'makeTen':
      return words('didTen');
    case 'exchange':
      return words('didExchange', {
        tens: action.tens,
        ones: action.ones,
        place: placeWord(placeOf(mat, action.to)),
      });
    case 'slide':
      return words('didSlide', {
        place: placeWord(placeOf(mat, action.to)),
        row: rowWord(action.to[0]),
      });
    case 'say':
      return typeof action.answer === 'string'
        ? words('didSay', { answer: action.answer })
        : words('didShow', {
            row: placeWord(action.answer[0]),
            column: placeWord(action.answer[1]),
          });
    case 'begin':
      return words('didBegin', { row: action.row });
    case 'write': {
      const { digit } = action;
      if ('slot' in action) return words(action.slot === 'own' ? 'inLower' : 'inUpper', { digit });
      return action.line.startsWith('carry')
        ? words('carriedCell', { digit })
        : words('didWrite', { digit, place: placeWord(action.place) });
    }
    case 'point':
      return words('didPoint', { places: action.places });
    case 'rub':
      return words('didRub');
    case 'finish': {
      const part = action.what === 'product' ? 'productDone' : 'rowDone';
      return action.what === 'problem' ? '' : `${words(part)}.`;
    }
    case 'undo':
      return words('didUndo', { what: told(work, undone(work)) });
    default:
      return '';
  }
};

/** Why something could not be done, in plain words. */
export const refusal = (code: RefusalCode): Sentence => {
  switch (code) {
    case 'notTen':
      return sentence('refusedNotTen');
    case 'nothingThere':
    case 'emptyPile':
    case 'notEnoughBars':
      return sentence('refusedNothingThere');
    case 'offTheMat':
    case 'offTheEdge':
    case 'offThePaper':
      return sentence('refusedOff');
    case 'nothingToUndo':
      return sentence('refusedUndo');
    case 'finished':
      return sentence('refusedFinished');
    default:
      return sentence('refused');
  }
};

const control = (work: Work) => work.problem.policy.control;

/** Whether this mat answers at all when it is asked in the middle of the work. */
export const answers = (work: Work): boolean =>
  control(work) === 'checkpoint' || control(work) === 'eachStep';

/** What the mat says after it was asked; null when the next sentence does. */
export const answerOf = (work: Work, action: Action): Sentence | null => {
  if (!answers(work) || (action.do !== 'check' && action.do !== 'finish')) return null;
  if (work.lifted.length > 0) return sentence('lookAgain');
  if (action.do === 'check') return sentence('allRight');
  return action.what.startsWith('row:') ? sentence('rowRight') : null;
};
