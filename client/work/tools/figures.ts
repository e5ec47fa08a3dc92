import { html, svg, type TemplateResult } from 'lit';
import type { Slot, Square } from '../../../engine/child.ts';
import { sameSquare } from '../../mat/geometry.ts';
import { type WordId, words } from '../../words/words.ts';
import { rubDigit, writeDigit } from '../pens.ts';
import { box, picture } from '../pictures.ts';
import { sentence } from '../says.ts';
import type { At, Tool } from '../tool.ts';
import { finishButton, pad, rowChips } from './parts.ts';

const figurePicture = picture([
  box(42, 30, 40),
  box(86, 30, 40),
  svg`<path class="cell" d="M42 70 82 30M86 70 126 30" /><text x="53" y="48">1</text><text x="116" y="64">2</text><text x="84" y="20">3 × 4</text>`,
]);

const CORNERS: Readonly<Record<Slot, WordId>> = { own: 'lowerCorner', fromRight: 'upperCorner' };

const penSquare = ({ desk }: At): Square | null =>
  desk.spot !== null && 'square' in desk.spot ? desk.spot.square : null;

const penSlot = ({ desk }: At): Slot =>
  desk.spot !== null && 'square' in desk.spot ? desk.spot.slot : 'own';

const to = (at: At, square: Square, slot: Slot): void =>
  at.set({ spot: { square, slot }, row: square[0], message: null, status: words(CORNERS[slot]) });

/** A press goes to the lower corner of the square, the next one to the upper, and so on. */
const press = (at: At, square: Square): void => {
  const here = sameSquare(penSquare(at), square);
  to(at, square, here && penSlot(at) === 'own' ? 'fromRight' : 'own');
};

const corner = (at: At, slot: Slot): TemplateResult => {
  const square = penSquare(at);
  return html`<button
    data-slot=${slot}
    ?disabled=${square === null}
    aria-pressed=${square !== null && penSlot(at) === slot}
    @click=${() => square !== null && to(at, square, slot)}
  >${words(CORNERS[slot])}</button>`;
};

const tray = (at: At): TemplateResult => html`<div class="line">
    <div class="chips" role="group" aria-label=${words('corners')}>${corner(at, 'fromRight')}${corner(at, 'own')}</div>
    <span class="grow"></span>
    <div class="chips" role="group" aria-label=${words('rows')}>${rowChips(at, (row) => at.set({ row }))}</div>
    ${finishButton(at, `row:${at.desk.row}`, 'rowDone')}</div>
  ${pad(at, words('digits'))}`;

const write = (at: At, digit: number): void => {
  if (penSquare(at) === null) at.set({ message: sentence('pressCorner') });
  else writeDigit(at, digit);
};

/** Facts in figures: two corners a square, one for the units of its own fact, one for the tens of the fact to the right. */
export const figures: Tool = {
  id: 'figures',
  word: 'moveFigures',
  ask: 'askFigures',
  picture: figurePicture,
  says: (_at, _next, row) => sentence('nextFigures', { row }),
  tray,
  press: (at, cell) => {
    if (cell.at === 'square') press(at, [cell.row, cell.column]);
  },
  digit: write,
  rub: rubDigit,
  drop: (at, source, cell, upper) => {
    if (source.what !== 'digit' || cell.at !== 'square') return;
    to(at, [cell.row, cell.column], upper ? 'fromRight' : 'own');
    write(at, source.digit);
  },
  key: (at, cell, key) => {
    if (cell.at !== 'square') return 'unused';
    const square: Square = [cell.row, cell.column];
    const here = sameSquare(penSquare(at), square);
    if (key === 'Enter') press(at, square);
    else if (/^\d$/.test(key) || key === 'Backspace' || key === 'Delete') {
      if (!here) to(at, square, 'own');
      if (/^\d$/.test(key)) write(at, Number(key));
      else rubDigit(at);
    } else return 'unused';
    return 'used';
  },
};
