import type { Square } from '../../engine/child.ts';
import type { Cell } from '../mat/cells.ts';
import type { DeskController } from './desk.ts';
import { toolsOf } from './moves.ts';
import {
  layTile,
  openSquare,
  pressCell,
  pressDigit,
  pressPoint,
  rubOut,
  sayRow,
} from './presses.ts';

/** What a key did: nothing, something, or something after which the focus goes to another cell. */
type Outcome = 'unused' | 'used' | Cell;

const turn = (at: DeskController, by: number): Outcome => {
  const tools = toolsOf(at.work.problem.stage);
  const to = tools[tools.indexOf(at.desk.tool) + by];
  if (to !== undefined) at.choose(to);
  return 'used';
};

const digitKey = (at: DeskController, cell: Cell, digit: number): Outcome => {
  if (cell.at !== 'square') {
    layTile(at, { edge: cell.at, index: cell.index }, digit);
    return cell.index > 0 ? { at: cell.at, index: cell.index - 1 } : 'used';
  }
  const square: Square = [cell.row, cell.column];
  if (at.desk.tool === 'lay') {
    if (digit > 0) at.do({ do: 'layBars', square, kind: digit, count: at.desk.howMany });
  } else if (at.desk.tool === 'row') {
    sayDigit(at, cell.row, digit);
  } else if (at.desk.tool === 'read' && cell.row === 0) {
    at.do({ do: 'write', line: 'product', place: at.work.problem.mat.origin + cell.column, digit });
  } else openSquare(at, square);
  return 'used';
};

/** In the row's move digits make up what the row is said to make. */
const sayDigit = (at: DeskController, row: number, digit: number): void => {
  if (at.desk.row !== row) at.set({ row, answer: '' });
  pressDigit(at, digit);
};

const pointKey = (at: DeskController, cell: Cell): Outcome => {
  if (at.desk.tool === 'read' && cell.at === 'square')
    at.set({ place: at.work.problem.mat.origin + cell.column });
  pressPoint(at);
  return 'used';
};

const lift = (at: DeskController, cell: Cell): Outcome => {
  if (cell.at !== 'square') {
    at.do({ do: 'liftTile', edge: cell.at, index: cell.index });
    return 'used';
  }
  if (at.desk.tool === 'row') {
    rubOut(at);
    return 'used';
  }
  const square: Square = [cell.row, cell.column];
  const bars = at.work.position.piles[cell.row]?.[cell.column]?.bars ?? [];
  const kinds = bars.flatMap((count, i) => (count > 0 ? [{ kind: i + 1, count }] : []));
  const [only] = kinds;
  if (only !== undefined && kinds.length === 1) at.do({ do: 'liftBars', square, ...only });
  else openSquare(at, square);
  return 'used';
};

const more = (at: DeskController, by: number): Outcome => {
  at.set({ howMany: Math.min(9, Math.max(1, at.desk.howMany + by)) });
  return 'used';
};

/** Keys on a cell of the mat, beside the walking keys. They work only while the mat has the focus. */
export const cellKey = (at: DeskController, cell: Cell, event: KeyboardEvent): Outcome => {
  if (event.ctrlKey || event.metaKey || event.altKey || at.work.finished.problem) return 'unused';
  if (/^\d$/.test(event.key)) return digitKey(at, cell, Number(event.key));
  switch (event.key) {
    case 'Enter':
      if (at.desk.tool === 'row' && at.desk.answer !== '') sayRow(at);
      else if (cell.at === 'square') openSquare(at, [cell.row, cell.column]);
      else pressCell(at, cell);
      return 'used';
    case ' ':
      pressCell(at, cell);
      return 'used';
    case '.':
    case ',':
      return pointKey(at, cell);
    case '+':
      return more(at, 1);
    case '-':
      return more(at, -1);
    case 'Backspace':
    case 'Delete':
      return lift(at, cell);
    case 'PageDown':
      return turn(at, 1);
    case 'PageUp':
      return turn(at, -1);
    case 'Escape':
      at.set({ held: null, slot: null, hint: null });
      return 'used';
    default:
      return 'unused';
  }
};
