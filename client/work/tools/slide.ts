import { html, type TemplateResult } from 'lit';
import type { Square } from '../../../engine/child.ts';
import { sameSquare } from '../../mat/geometry.ts';
import { words } from '../../words/words.ts';
import { beads, box, picture, way } from '../pictures.ts';
import { sentence } from '../says.ts';
import type { At, Tool } from '../tool.ts';

const slidingPicture = picture([
  box(76, 4),
  box(41, 4, 32, 'other'),
  box(76, 39, 32, 'other'),
  box(41, 39),
  ...beads(84, 16, 3, 8),
  ...beads(49, 58, 3, 8),
  way('M85 28 66 47M66 39v9h9'),
]);

const hasBars = ({ work }: At, [row, column]: Square): boolean =>
  work.position.piles[row]?.[column]?.bars.some((count) => count > 0) ?? false;

const slideTo = (at: At, from: Square, to: Square): void => {
  if (!sameSquare(from, to)) at.do({ do: 'slide', from, to });
};

const press = (at: At, square: Square): void => {
  const { held } = at.desk;
  if (held?.what !== 'pile') {
    if (hasBars(at, square))
      at.set({ held: { what: 'pile', from: square }, status: words('pickedUp'), message: null });
    else at.set({ message: sentence('pressPile') });
  } else if (sameSquare(held.from, square)) at.set({ held: null, status: words('putBack') });
  else slideTo(at, held.from, square);
};

const tray = (): TemplateResult =>
  html`<div class="line"><span class="grow">${words('pressPile')}</span>${slidingPicture}</div>`;

export const slide: Tool = {
  id: 'slide',
  word: 'moveSlide',
  ask: 'askSlide',
  picture: slidingPicture,
  says: () => sentence('nextSlide'),
  tray,
  press: (at, cell) => {
    if (cell.at === 'square') press(at, [cell.row, cell.column]);
  },
  drop: (at, source, cell) => {
    if (source.what === 'pile' && cell.at === 'square')
      slideTo(at, [source.row, source.column], [cell.row, cell.column]);
  },
  grabs: true,
};
