import { html, svg, type TemplateResult } from 'lit';
import { numbersOf, words } from '../../words/words.ts';
import { box, picture, way } from '../pictures.ts';
import { sentence } from '../says.ts';
import type { At, Tool } from '../tool.ts';
import { pad } from './parts.ts';

const tilePicture = picture([
  box(18, 4),
  box(53, 4),
  box(88, 4),
  svg`<rect class="cell" x="60" y="42" width="18" height="20" rx="3" /><text x="69" y="58">3</text>
      <rect class="cell" x="95" y="42" width="18" height="20" rx="3" /><text x="104" y="58">4</text>`,
  way('M132 24 112 44M112 34v10h10'),
]);

/** Lays a tile and offers the next lower place of the same number. */
const layTile = (
  at: At,
  { edge, index }: { edge: 'bottom' | 'right'; index: number },
  digit: number,
): void => {
  if (at.do({ do: 'layTile', edge, index, digit }))
    at.set({ slot: index > 0 ? { at: edge, index: index - 1 } : null });
};

const tray = (at: At): TemplateResult =>
  html`<p class="ask">${words('pickTile')}</p>${pad(at, words('digits'))}`;

export const tiles: Tool = {
  id: 'tiles',
  word: 'moveTiles',
  ask: 'askTiles',
  picture: tilePicture,
  says: ({ work }) => sentence('nextTiles', numbersOf(work.problem)),
  tray,
  press: (at, cell) => {
    if (cell.at === 'square') at.set({ message: sentence('pickTile') });
    else at.set({ slot: cell, message: null });
  },
  digit: (at, digit) => {
    const { slot } = at.desk;
    if (slot === null) at.set({ message: sentence('pickTile') });
    else layTile(at, { edge: slot.at, index: slot.index }, digit);
  },
  rub: (at) => {
    const { slot } = at.desk;
    if (slot !== null) at.do({ do: 'liftTile', edge: slot.at, index: slot.index });
  },
  drop: (at, source, cell) => {
    if (source.what === 'digit' && cell.at !== 'square')
      layTile(at, { edge: cell.at, index: cell.index }, source.digit);
  },
};
