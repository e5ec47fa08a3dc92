import {
  type Action,
  type HintLevel,
  hint,
  placeOf,
  type Square,
  type Suggestion,
  type Work,
} from '../../engine/child.ts';
import { type Cell, squareCell, tileCell } from '../mat/cells.ts';
import { placeWord, type WordId, words } from '../words/words.ts';
import { toolFor } from './moves.ts';
import { type Sentence, sentence } from './sentence.ts';

/** What a hint shows: level 1 asks, 2 marks where, 3 says how. `step` names the obligation that it helps with. */
export interface HintShown {
  readonly level: HintLevel;
  readonly step: string | null;
  readonly sentence: Sentence;
  readonly marks: readonly Cell[];
  readonly place: number | null;
}

const ASKS: Record<string, WordId> = {
  tiles: 'askTiles',
  lay: 'askLay',
  count: 'askCount',
  row: 'askRow',
  slide: 'askSlide',
  read: 'askRead',
};

const marksOf = (action: Action): Cell[] => {
  switch (action.do) {
    case 'layTile':
    case 'liftTile':
      return [tileCell(action.edge, action.index)];
    case 'exchange':
    case 'slide':
      return [squareCell(action.from), squareCell(action.to)];
    case 'say':
      return 'row' in action ? [tileCell('right', action.row)] : [];
    default:
      return 'square' in action ? [squareCell(action.square)] : [];
  }
};

const tilePlace = (work: Work, edge: 'bottom' | 'right', index: number): string => {
  const { multiplicand, multiplier } = work.problem;
  return placeWord((edge === 'bottom' ? multiplicand : multiplier).lowest + index);
};

const barWords = ({ count, kind }: { readonly count: number; readonly kind: number }): string =>
  words('someBars', { count, kind });

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
      return sentence('howSay');
    case 'write':
      return sentence('howWrite', { place: 'place' in action ? placeWord(action.place) : '' });
    case 'point':
      return sentence('howPoint');
    case 'undo':
      return sentence('howUndo');
    default:
      return sentence('howDone');
  }
};

const words1 = (next: Suggestion): Sentence => {
  const tool = toolFor(next.say.key);
  return sentence((tool === null ? undefined : ASKS[tool]) ?? 'nextMend');
};

/** The obligation that a move would meet; the engine's own choice where the move mends something. */
const stepOf = (work: Work, level: HintLevel, action: Action): string | null => {
  const settled = (square: Square) => `settled:${placeOf(work.problem.mat, square)}`;
  const named: string[] = [];
  if (action.do === 'layTile') named.push(`tile:${action.edge}:${action.index}`);
  if (action.do === 'layBars') named.push(`laid:${action.square.join(':')}`);
  if (action.do === 'count' || action.do === 'makeTen')
    named.push(`counted:${action.square.join(':')}`, settled(action.square));
  if (action.do === 'exchange') named.push(settled(action.from));
  if (action.do === 'slide') named.push(`slid:${action.from[0]}`);
  if (action.do === 'say' && 'row' in action) named.push(`said:${action.row}`);
  if (action.do === 'write' && 'place' in action) named.push(`read:${action.place}`);
  if (action.do === 'point') named.push('point');
  const open = work.steps.find(({ id, status }) => status === 'open' && named.includes(id));
  return open?.id ?? work.lifted[0]?.step ?? hint(work, level)?.step ?? null;
};

/** Help for the next sensible move of this position. */
export const showHint = (work: Work, level: HintLevel, next: Suggestion | null): HintShown => {
  if (next === null)
    return { level, step: null, sentence: sentence('howDone'), marks: [], place: null };
  const { action } = next;
  const step = stepOf(work, level, action);
  const shown =
    level === 1 ? words1(next) : level === 2 ? sentence('whereHere') : how(work, action);
  const place = action.do === 'write' && 'place' in action ? action.place : null;
  return level === 1
    ? { level, step, sentence: shown, marks: [], place: null }
    : { level, step, sentence: shown, marks: marksOf(action), place };
};
