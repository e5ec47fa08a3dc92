import type { Square } from '../../engine/child.ts';
import type { Cell } from '../mat/cells.ts';
import { words } from '../words/words.ts';
import { pileKinds } from './bench.ts';
import { openSquare, pressCell, takeAway } from './presses.ts';
import type { At, Outcome } from './tool.ts';

const turn = (at: At, by: number): Outcome => {
  const { tools, tool } = at;
  const to = tools[tools.indexOf(tool) + by];
  if (to !== undefined) at.choose(to.id);
  return 'used';
};

const tileDigit = (at: At, cell: Extract<Cell, { index: number }>, digit: number): Outcome => {
  at.do({ do: 'layTile', edge: cell.at, index: cell.index, digit });
  return cell.index > 0 ? { at: cell.at, index: cell.index - 1 } : 'used';
};

/** The whole pile if its bars are alike; else it is opened, to choose from. */
const lift = (at: At, cell: Cell): Outcome => {
  if (cell.at !== 'square') at.do({ do: 'liftTile', edge: cell.at, index: cell.index });
  else {
    const square: Square = [cell.row, cell.column];
    const kinds = pileKinds(at, cell.row, cell.column);
    if (new Set(kinds).size === 1) takeAway(at, square, kinds);
    else openSquare(at, square);
  }
  return 'used';
};

const more = (at: At, by: number): Outcome => {
  const howMany = Math.min(9, Math.max(1, at.desk.howMany + by));
  at.set({ howMany, status: `${words('howMany')} ${howMany}` });
  return 'used';
};

const hasTiles = ({ tools }: At): boolean => tools.some(({ id }) => id === 'tiles');
const hasBars = ({ tools }: At): boolean => tools.some(({ id }) => id === 'count');

const shared = (at: At, cell: Cell, key: string): Outcome => {
  switch (key) {
    case 'Enter':
      if (cell.at === 'square' && hasBars(at)) openSquare(at, [cell.row, cell.column]);
      else pressCell(at, cell);
      return 'used';
    case ' ':
      pressCell(at, cell);
      return 'used';
    case '+':
      return more(at, 1);
    case '-':
      return more(at, -1);
    case 'Backspace':
    case 'Delete':
      return hasTiles(at) ? lift(at, cell) : 'unused';
    case 'PageDown':
      return turn(at, 1);
    case 'PageUp':
      return turn(at, -1);
    case 'Escape':
      at.set({ held: null, slot: null, spot: null, hint: null });
      return 'used';
    default:
      return 'unused';
  }
};

/** Keys on a cell of the mat, beside the walking keys. They work only while the mat has the focus. */
export const cellKey = (at: At, cell: Cell, event: KeyboardEvent): Outcome => {
  if (event.ctrlKey || event.metaKey || event.altKey || at.work.finished.problem) return 'unused';
  const own = at.tool.key?.(at, cell, event.key) ?? 'unused';
  if (own !== 'unused') return own;
  if (cell.at !== 'square' && /^\d$/.test(event.key) && hasTiles(at))
    return tileDigit(at, cell, Number(event.key));
  return shared(at, cell, event.key);
};
