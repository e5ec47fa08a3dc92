import { html, svg, type TemplateResult } from 'lit';
import { placeOf, type Square } from '../../../engine/child.ts';
import { placeWord, words } from '../../words/words.ts';
import { beads, box, picture, way } from '../pictures.ts';
import { openSquare } from '../presses.ts';
import { sentence } from '../says.ts';
import type { At, Tool } from '../tool.ts';
import { pad } from './parts.ts';

const openingPicture = picture([
  box(4, 24, 30),
  ...beads(12, 36, 3, 7),
  ...beads(12, 44, 3, 7),
  way('M42 39h18M54 33l7 6-7 6'),
  svg`<rect class="square" x="70" y="4" width="76" height="68" rx="7" />`,
  ...beads(86, 28, 3, 20),
  ...beads(86, 50, 3, 20),
]);

/** Once nothing is left to slide, counting means the bottom row as a whole. */
const combining = ({ work }: At): boolean => {
  const slides = work.steps.filter(({ id }) => id.startsWith('slid:'));
  return slides.length > 0 && slides.every(({ status }) => status !== 'open');
};

const howMany = ({ work }: At, to: Square): string =>
  words('howManyIn', { place: placeWord(placeOf(work.problem.mat, to)) });

const withTens = (at: At, to: Square | null): TemplateResult =>
  to === null
    ? html`<div class="line"><span class="grow">${words('pressWhere')}</span></div>`
    : html`<p class="ask">${howMany(at, to)}</p>${pad(at, words('howManyThere'))}`;

const tray = (at: At): TemplateResult =>
  at.desk.held?.what === 'tens'
    ? withTens(at, at.desk.held.to)
    : html`<div class="line"><span class="grow">${words('pressSquare')}</span>${openingPicture}</div>`;

const layThere = (at: At, ones: number): void => {
  const { held } = at.desk;
  if (held?.what !== 'tens' || held.to === null) return;
  const { from, tens, to } = held;
  at.do({ do: 'exchange', from, tens, to, ones });
};

export const count: Tool = {
  id: 'count',
  word: 'moveCount',
  ask: 'askCount',
  picture: openingPicture,
  says: (at, _next, row) =>
    combining(at) ? sentence('nextCountBottom') : sentence('nextCount', { row }),
  tray,
  press: (at, cell) => {
    const { held } = at.desk;
    if (cell.at !== 'square') return;
    const square: Square = [cell.row, cell.column];
    if (held?.what === 'tens')
      at.set({ held: { ...held, to: square }, message: null, status: howMany(at, square) });
    else openSquare(at, square);
  },
  digit: layThere,
  rub: (at) => at.set({ held: null }),
  key: (at, cell, key) => {
    const { held } = at.desk;
    if (held?.what !== 'tens') {
      if (cell.at === 'square' && /^\d$/.test(key)) openSquare(at, [cell.row, cell.column]);
      else return 'unused';
    } else if (/^\d$/.test(key)) layThere(at, Number(key));
    else return 'unused';
    return 'used';
  },
};
