import type { Square } from '../../engine/child.ts';
import type { Cell } from '../mat/cells.ts';
import { sameSquare } from '../mat/geometry.ts';
import type { OpenDeed } from '../mat/open-square.ts';
import { words } from '../words/words.ts';
import type { DeskController, Held } from './desk.ts';
import { sentence } from './sentence.ts';

const hasBars = ({ work }: DeskController, [row, column]: Square): boolean =>
  work.position.piles[row]?.[column]?.bars.some((count) => count > 0) ?? false;

export const openSquare = (at: DeskController, square: Square): void =>
  at.set({ open: square, held: null, message: null, status: '' });

const layHeld = (at: DeskController, kind: number, square: Square): void => {
  at.do({ do: 'layBars', square, kind, count: at.desk.howMany });
};

const slidePress = (at: DeskController, square: Square): void => {
  const { held } = at.desk;
  if (held?.what !== 'pile') {
    if (hasBars(at, square))
      at.set({ held: { what: 'pile', from: square }, status: words('pickedUp'), message: null });
    else at.set({ message: sentence('pressPile') });
  } else if (sameSquare(held.from, square)) at.set({ held: null, status: words('putBack') });
  else at.do({ do: 'slide', from: held.from, to: square });
};

const pressSquare = (at: DeskController, square: Square): void => {
  const { tool, held } = at.desk;
  if (tool === 'lay' && held?.what === 'bars') layHeld(at, held.kind, square);
  else if (tool === 'slide') slidePress(at, square);
  else if (tool === 'row') at.set({ row: square[0], answer: '', message: null });
  else openSquare(at, square);
};

/** A press (tap, click, Space) on a square or a tile's place means what the chosen move makes of it. */
export const pressCell = (at: DeskController, cell: Cell): void => {
  if (at.work.finished.problem) return;
  if (cell.at === 'square') pressSquare(at, [cell.row, cell.column]);
  else if (at.desk.tool === 'tiles') at.set({ slot: cell, message: null });
  else if (at.desk.tool === 'row' && cell.at === 'right')
    at.set({ row: cell.index, answer: '', message: null });
};

/** Lays a tile and offers the next lower place of the same number. */
export const layTile = (
  at: DeskController,
  slot: { edge: 'bottom' | 'right'; index: number },
  digit: number,
): boolean => {
  if (!at.do({ do: 'layTile', ...slot, digit })) return false;
  at.set({ slot: slot.index > 0 ? { at: slot.edge, index: slot.index - 1 } : null });
  return true;
};

const writeDigit = (at: DeskController, digit: number): void => {
  const { place } = at.desk;
  if (place === null) at.set({ message: sentence('pressDigit') });
  else if (at.do({ do: 'write', line: 'product', place, digit }))
    at.set({ place: place > at.work.problem.mat.origin ? place - 1 : null });
};

/** A digit of the keypad, for whatever the chosen move asks. */
export const pressDigit = (at: DeskController, digit: number): void => {
  const { tool, slot, answer } = at.desk;
  if (tool === 'row') at.set({ answer: `${answer}${digit}`.slice(0, 14), message: null });
  else if (tool === 'read') writeDigit(at, digit);
  else if (slot === null) at.set({ message: sentence('pickTile') });
  else layTile(at, { edge: slot.at, index: slot.index }, digit);
};

/** The point of what is said, or of the product: it comes after the digit whose place is chosen. */
export const pressPoint = (at: DeskController): void => {
  const { tool, answer, place } = at.desk;
  const { origin } = at.work.problem.mat;
  if (tool === 'row' && !answer.includes('.')) at.set({ answer: `${answer || '0'}.` });
  else if (tool === 'read' && place === null) at.set({ message: sentence('pressPointAfter') });
  else if (tool === 'read' && place !== null)
    at.do({ do: 'point', on: 'product', places: place - origin });
};

export const rubOut = (at: DeskController): void => {
  const { tool, slot, answer, place } = at.desk;
  if (tool === 'row') at.set({ answer: answer.slice(0, -1) });
  else if (tool === 'read' && place !== null) at.do({ do: 'rub', line: 'product', place });
  else if (slot !== null) at.do({ do: 'liftTile', edge: slot.at, index: slot.index });
};

export const pickBar = (at: DeskController, kind: number): void => {
  const { held } = at.desk;
  const again = held?.what === 'bars' && held.kind === kind;
  at.set({ held: again ? null : ({ what: 'bars', kind } satisfies Held), message: null });
};

export const sayRow = (at: DeskController): void => {
  const { row, answer } = at.desk;
  if (answer !== '' && at.do({ do: 'say', row, answer: answer.replace(/\.$/, '') }))
    at.set({ answer: '' });
};

const takeAway = (at: DeskController, square: Square, bars: readonly number[]): void => {
  for (const kind of new Set(bars))
    at.do({ do: 'liftBars', square, kind, count: bars.filter((other) => other === kind).length });
};

/** What was done in an opened square becomes actions; "make ten and exchange" is two of them. */
export const doDeed = (at: DeskController, deed: OpenDeed): void => {
  const square = at.desk.open;
  if (square === null) return;
  const to: Square = [square[0], square[1] + 1];
  if (deed.is === 'count') at.do({ do: 'count', square, total: deed.total });
  else if (deed.is === 'takeAway') takeAway(at, square, deed.bars);
  else if (deed.is === 'exchange')
    at.do({ do: 'exchange', from: square, tens: deed.tens, to, ones: deed.ones });
  else {
    const { bars, split } = deed.pick;
    const made = at.do({ do: 'makeTen', square, bars, ...(split === null ? {} : { split }) });
    if (made && deed.exchange) at.do({ do: 'exchange', from: square, tens: 1, to, ones: 1 });
  }
};
