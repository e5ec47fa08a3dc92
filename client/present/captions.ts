import type { Problem, Prompt, Suggestion } from '../../engine/child.ts';
import { type PresentWordId, presentWords } from '../words/class-present-words.ts';
import type { Values } from '../words/values.ts';
import { numbersText, numeral, placeWord, placeWorth, rowWord, words } from '../words/words.ts';

type Say = Suggestion['say'];

/** The two numbers as they are read; empty where a problem has none. */
export const numbersShown = (problem: Problem): string =>
  problem.multiplicand.digits.length === 0 ? '' : numbersText(problem);

const PLACES = ['place', 'next'];

/** Values of the engine as words: places and rows by name, numbers as texts the locale's way. */
const written = (values: Say['values']): Values =>
  Object.fromEntries(
    Object.entries(values).map(([name, value]) => {
      if (typeof value === 'number' && PLACES.includes(name)) return [name, placeWord(value)];
      if (typeof value === 'number') return [name, name === 'row' ? rowWord(value) : value];
      return [
        name,
        typeof value === 'string' && name === 'answer' ? numeral(value) : String(value),
      ];
    }),
  );

/** A row is read from the bars at `record`, and calculated on paper. */
const partialWord = ({ values }: Say, { stage }: Problem): PresentWordId => {
  if (stage === 'record') return 'writePartialRead';
  return values.across === undefined ? 'writePartialLast' : 'writePartial';
};

const captionQuestion = (prompt: Prompt): string => {
  switch (prompt.ask) {
    case 'worth':
      return words('askWorth');
    case 'square':
      return presentWords('askSquare', { worth: placeWorth(prompt.place) });
    case 'category': {
      const [across, up] = prompt.places;
      return presentWords('askCategory', { across: placeWord(across), up: placeWord(up) });
    }
    case 'number':
      return words(prompt.of === 'multiplicand' ? 'askNumberBelow' : 'askNumberBeside');
  }
};

/** Which sentence a move gets; of some moves there are two kinds. */
const wordOf = (say: Say, problem: Problem): PresentWordId => {
  const { values } = say;
  switch (say.key) {
    case 'layTile':
      return values.edge === 'bottom' ? 'layTileBottom' : 'layTileRight';
    case 'layBars':
      return problem.stage === 'facts' ? 'layFact' : 'layBars';
    case 'begin':
      return 'beginRow';
    case 'writePartial':
      return partialWord(say, problem);
    case 'writeSquare':
      return values.slot === 'own' ? 'writeSquareOwn' : 'writeSquareLeft';
    case 'sayPrompt':
      return typeof values.answer === 'string' ? 'sayPrompt' : 'sayPlace';
    case 'finishProblem':
      return problem.prompts.length > 0 ? 'finishQuestions' : 'finishProblem';
    default:
      return say.key;
  }
};

/** What a move of the worked presentation does, in one short sentence. */
export const captionOf = ({ action, say }: Suggestion, problem: Problem): string => {
  const values = { numbers: numbersShown(problem), ...written(say.values) };
  if (action.do !== 'say' || !('prompt' in action))
    return presentWords(wordOf(say, problem), values);
  const prompt = problem.prompts[action.prompt];
  const answer = presentWords(wordOf(say, problem), values);
  return prompt === undefined ? answer : `${captionQuestion(prompt)} ${answer}`;
};

export const openingOf = (problem: Problem): string =>
  problem.multiplicand.digits.length === 0
    ? presentWords('beginQuestions')
    : presentWords('begin', { numbers: numbersShown(problem) });
