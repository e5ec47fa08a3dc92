import { html, svg, type TemplateResult } from 'lit';
import { words } from '../../words/words.ts';
import { chooseRow, rubDigit, setPoint, writeDigit } from '../pens.ts';
import { line, picture, way } from '../pictures.ts';
import { sentence } from '../says.ts';
import type { At, Tool } from '../tool.ts';
import { finishButton, pad, rowChips } from './parts.ts';

const writePicture = picture([
  ...line(50, 2, '34'),
  svg`<text x="118" y="18">× 7</text>`,
  svg`<path class="way" d="M30 30h100" />`,
  ...line(50, 40, '.8'),
  way('M112 24 92 40M92 30v10h10'),
]);

const tray = (at: At): TemplateResult => html`<div class="line">
    <span>${words('touchDigit')}</span>
    <div class="chips" role="group" aria-label=${words('rows')}>${rowChips(at, (row) => chooseRow(at, row))}</div><span class="grow"></span>${finishButton(at, `row:${at.desk.row}`, 'rowDone')}</div>
  ${pad(at, words('digits'))}`;

/** The partial products on paper: the digit of the multiplier is touched first, then its row is written. */
export const write: Tool = {
  id: 'write',
  word: 'moveRows',
  ask: 'askWrite',
  picture: writePicture,
  carries: true,
  says: ({ work }, next, row) => {
    if (next?.action.do === 'begin') return sentence('nextBegin', { row });
    return sentence(work.problem.stage === 'paper' ? 'nextMultiplyRow' : 'nextWriteRow', { row });
  },
  tray,
  press: (at, cell) => {
    if (cell.at === 'right') chooseRow(at, cell.index);
    else if (cell.at === 'square') chooseRow(at, cell.row);
  },
  digit: writeDigit,
  point: setPoint,
  rub: rubDigit,
};

/** From the mat a row is read, and nothing carried. */
export const record: Tool = { ...write, carries: false };
