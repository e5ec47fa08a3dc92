import { html, type TemplateResult } from 'lit';
import type { Line } from '../../../engine/child.ts';
import type { Cell } from '../../mat/cells.ts';
import { words } from '../../words/words.ts';
import { rubDigit, setPoint, writeDigit } from '../pens.ts';
import { beads, box, line, picture, way } from '../pictures.ts';
import { openSquare } from '../presses.ts';
import { sentence } from '../says.ts';
import type { At, Tool } from '../tool.ts';
import { finishButton, hasPoint, pad } from './parts.ts';

const readPicture = picture([
  ...[30, 64, 98].map((x) => box(x, 2, 30)),
  ...beads(45, 17, 1, 8),
  ...beads(72, 17, 2, 8),
  ...beads(106, 17, 3, 8),
  way('M79 34v10M74 40l5 5 5-5'),
  ...line(34, 50, '12.', 30),
]);

const finishing = (at: At) => {
  const { finished, lifted } = at.work;
  if (!finished.product) return finishButton(at, 'product', 'productDone');
  return lifted.length > 0
    ? html`${finishButton(at, 'problem', 'leaveIt', '')}${finishButton(at, 'product', 'productDone')}`
    : finishButton(at, 'problem', 'problemDone');
};

const tray = (at: At): TemplateResult =>
  html`<div class="line"><span class="grow">${words(at.tool.carries ? 'pressDigitCarry' : 'pressDigit')}</span>${finishing(at)}</div>${pad(at, words('digits'), hasPoint(at))}`;

const atColumn = (at: At, column: number) => ({
  line: 'product' as Line,
  place: at.work.problem.mat.origin + column,
});

/** On the bottom row a digit is written in the product below it: what lies there is what is read. */
const key = (at: At, cell: Cell, pressed: string) => {
  if (cell.at !== 'square' || cell.row > 0) return 'unused' as const;
  if (/^\d$/.test(pressed)) {
    at.set({ spot: atColumn(at, cell.column) });
    writeDigit(at, Number(pressed));
  } else if (pressed === '.' || pressed === ',') {
    at.set({ spot: atColumn(at, cell.column) });
    setPoint(at);
  } else return 'unused' as const;
  return 'used' as const;
};

export const read: Tool = {
  id: 'read',
  word: 'moveRead',
  ask: 'askRead',
  picture: readPicture,
  says: () => sentence('nextRead'),
  tray,
  press: (at, cell) => {
    if (cell.at === 'square') openSquare(at, [cell.row, cell.column]);
  },
  digit: writeDigit,
  point: setPoint,
  rub: rubDigit,
  key,
};
