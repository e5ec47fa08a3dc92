import { answerSheets } from './answer-sheets.ts';
import { barSheets } from './bar-sheets.ts';
import { cardSheets } from './card-sheets.ts';
import { type Choice, KINDS, type Kind } from './choice.ts';
import { helpSheets } from './help-sheets.ts';
import { matSheets } from './mat-sheets.ts';
import type { Sheet } from './sheet.ts';
import { squaredSheets } from './squared-sheets.ts';
import { tileSheets } from './tile-sheets.ts';

const MAKERS: Readonly<Record<Kind, (choice: Choice) => Sheet[]>> = {
  mat: matSheets,
  tiles: tileSheets,
  bars: barSheets,
  cards: cardSheets,
  answers: answerSheets,
  squared: squaredSheets,
  help: helpSheets,
};

/** Every sheet of a choice, in the order in which it is printed. */
export const sheetsOf = (choice: Choice): Sheet[] =>
  KINDS.filter((kind) => choice.kinds.includes(kind)).flatMap((kind) => MAKERS[kind](choice));
