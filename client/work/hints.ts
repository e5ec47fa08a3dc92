import {
  type Action,
  type HintLevel,
  placeOf,
  type Square,
  type Work,
} from '../../engine/child.ts';
import { type Cell, squareCell, tileCell } from '../mat/cells.ts';
import '../words/help-words.ts';
import { numeral, placeWord, words } from '../words/words.ts';
import { toolFor } from './moves.ts';
import { type Sentence, sentence } from './says.ts';
import type { At, HintShown, Spot } from './tool.ts';

/** All tiles of the number that is asked for. */
const tilesAsked = ({ problem }: Work, prompt: number): Cell[] => {
  const asked = problem.prompts[prompt];
  if (asked?.ask !== 'number') return [];
  const edge = asked.of === 'multiplicand' ? 'bottom' : 'right';
  return problem[asked.of].digits.map((_, index) => tileCell(edge, index));
};

const marksOf = (work: Work, action: Action): Cell[] => {
  switch (action.do) {
    case 'layTile':
    case 'liftTile':
      return [tileCell(action.edge, action.index)];
    case 'exchange':
    case 'slide':
      return [squareCell(action.from), squareCell(action.to)];
    case 'begin':
      return [tileCell('right', action.row)];
    case 'say':
      if ('row' in action) return [tileCell('right', action.row)];
      return typeof action.answer === 'string'
        ? tilesAsked(work, action.prompt)
        : edgesOf(action.answer);
    case 'point':
      // What the lowest places of the two numbers make together decides.
      return [tileCell('bottom', 0), tileCell('right', 0)];
    default:
      return 'square' in action ? [squareCell(action.square)] : [];
  }
};

/** A square is found by the places below it and beside it. */
const edgesOf = ([row, column]: Square): Cell[] => [
  tileCell('bottom', column),
  tileCell('right', row),
];

const tilePlace = (work: Work, edge: 'bottom' | 'right', index: number): string => {
  const { multiplicand, multiplier } = work.problem;
  return placeWord((edge === 'bottom' ? multiplicand : multiplier).lowest + index);
};

const barWords = ({ count, kind }: { readonly count: number; readonly kind: number }): string =>
  words('someBars', { count, kind });

const howToAnswer = (work: Work, action: Extract<Action, { prompt: number }>): Sentence => {
  const { prompt, answer } = action;
  const asked = work.problem.prompts[prompt]!;
  if (typeof answer !== 'string') {
    const [row, column] = answer;
    const places = { row: placeWord(row), column: placeWord(column) };
    return sentence('howSquare', {
      ...places,
      place: placeWord(placeOf(work.problem.mat, answer)),
    });
  }
  if (asked.ask !== 'worth') return sentence('howTell');
  const [row, column] = asked.square;
  const places = { row: placeWord(row), column: placeWord(column) };
  return sentence('howWorth', { ...places, worth: numeral(answer) });
};

const howToWrite = (work: Work, action: Extract<Action, { do: 'write' }>): Sentence => {
  if ('square' in action) {
    const word = action.slot === 'own' ? 'howFigureUnits' : 'howFigureTens';
    return sentence(word, { digit: action.digit });
  }
  const place = placeWord(action.place);
  if (action.line.startsWith('carry')) return sentence('howCarry', { digit: action.digit, place });
  const fromMat = ['bars1', 'bars', 'facts', 'record', 'open'].includes(work.problem.stage);
  return fromMat
    ? sentence('howWrite', { place })
    : sentence('howDigit', { digit: action.digit, place });
};

/** By what the places make together, never by a count of digits. */
const toPoint = (
  word: 'wherePoint' | 'howPoint',
  { problem: { multiplicand, multiplier } }: Work,
): Sentence =>
  sentence(word, {
    across: placeWord(multiplicand.lowest),
    up: placeWord(multiplier.lowest),
    place: placeWord(multiplicand.lowest + multiplier.lowest),
  });

const how = (work: Work, action: Action): Sentence => {
  switch (action.do) {
    case 'layTile':
      return sentence('howTile', {
        digit: action.digit,
        place: tilePlace(work, action.edge, action.index),
      });
    case 'liftTile':
      return sentence('howLiftTile', { place: tilePlace(work, action.edge, action.index) });
    case 'layBars':
      return sentence('howLay', { bars: barWords(action) });
    case 'liftBars':
      return sentence('howLift', { bars: barWords(action) });
    case 'count':
      return sentence('howCount');
    case 'makeTen':
      return sentence('howTen');
    case 'exchange':
      return sentence('howExchange', { tens: action.tens });
    case 'slide':
      return sentence('howSlide');
    case 'say':
      return 'prompt' in action ? howToAnswer(work, action) : sentence('howSay');
    case 'begin':
      return sentence('howBegin', { row: action.row });
    case 'write':
      return howToWrite(work, action);
    case 'rub':
      return sentence('howRub');
    case 'point':
      return toPoint('howPoint', work);
    case 'undo':
      return sentence('howUndo');
    default:
      return sentence('howDone');
  }
};

/** Where to look; the question that is put is marked on the mat anyway, and what has no place is told. */
const where = (work: Work, action: Action): Sentence => {
  if (action.do === 'point') return toPoint('wherePoint', work);
  return action.do === 'finish' || action.do === 'undo' ? how(work, action) : sentence('whereHere');
};

/** The pair of a fact that a figure on a square belongs to. */
const pairOf = ([row, column]: Square, slot: string): string =>
  `${row}:${slot === 'own' ? column : column - 1}`;

const stepsOf = (work: Work, action: Action): string[] => {
  const settled = (square: Square) => `settled:${placeOf(work.problem.mat, square)}`;
  switch (action.do) {
    case 'layTile':
      return [`tile:${action.edge}:${action.index}`];
    case 'layBars': {
      const pair = (action.of ?? action.square).join(':');
      return [`laid:${pair}`, `fact:${pair}`, `where:${pair}`];
    }
    case 'count':
    case 'makeTen':
      return [`counted:${action.square.join(':')}`, settled(action.square)];
    case 'exchange':
      return [settled(action.from)];
    case 'slide':
      return [`slid:${action.from[0]}`];
    case 'say':
      return ['prompt' in action ? `prompt:${action.prompt}` : `said:${action.row}`];
    case 'write':
      return writtenSteps(work, action);
    case 'point':
      return ['point'];
    default:
      return [];
  }
};

const writtenSteps = (work: Work, action: Extract<Action, { do: 'write' }>): string[] => {
  if ('square' in action) {
    const pair = pairOf(action.square, action.slot);
    return [`fact:${pair}`, `where:${pair}`];
  }
  const { line, place } = action;
  const row = work.position.paper.begun[line.replace('carry', 'partial')] ?? 0;
  const zero = `zero:${row}:${place - work.problem.mat.origin}`;
  const product = line.endsWith('product');
  return product
    ? [`read:${place}`, `sum:${place}`, `row:0:${place}`]
    : [`row:${row}:${place}`, zero];
};

/** The obligation that a move would meet; what is lifted where the move mends something; null: the engine names the first that is unmet. */
const stepOf = (work: Work, action: Action): string | null => {
  const named = stepsOf(work, action);
  const open = work.steps.find(({ id, status }) => status === 'open' && named.includes(id));
  return open?.id ?? work.lifted[0]?.step ?? null;
};

const spotOf = (action: Action): Spot | null => {
  if (action.do !== 'write' && action.do !== 'rub') return null;
  if ('square' in action) return { square: action.square, slot: action.slot };
  const line = action.line.replace(/^carry:(\d)/, 'partial:$1').replace('carry:', '');
  return { line: line as Extract<Spot, { place: number }>['line'], place: action.place };
};

const NOTHING = { step: null, marks: [], spot: null, picture: null } as const;

/** Help for the next sensible move of this position. */
export const showHint = ({ work, next, tools }: At, level: HintLevel): HintShown => {
  if (next === null) return { ...NOTHING, level, sentence: sentence('howDone') };
  const { action } = next;
  const step = stepOf(work, action);
  const tool = toolFor(tools, next);
  const picture = tool?.picture ?? null;
  if (level === 1)
    return { ...NOTHING, level, step, sentence: sentence(tool?.ask ?? 'nextMend'), picture };
  const shown = level === 2 ? where(work, action) : how(work, action);
  const answer = action.do === 'say' && typeof action.answer !== 'string' && 'prompt' in action;
  const marks =
    level === 3 && answer ? [squareCell(action.answer as Square)] : marksOf(work, action);
  return { level, step, sentence: shown, marks, spot: spotOf(action), picture };
};
