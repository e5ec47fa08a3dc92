import { html, type TemplateResult } from 'lit';
import { rowWord, words } from '../../words/words.ts';
import { beads, box, picture, way } from '../pictures.ts';
import { sentence } from '../says.ts';
import type { At, Tool } from '../tool.ts';
import { finishButton, hasPoint, pad, rowChips, typedText } from './parts.ts';

const rowPicture = picture([
  ...[4, 40, 76].map((x) => box(x, 22)),
  ...beads(20, 38, 1, 8),
  ...beads(48, 34, 2, 8),
  ...beads(84, 38, 3, 8),
  way('M14 64h88M94 58l9 6-9 6'),
]);

const LONGEST = 14;

const choose = (at: At, row: number): void =>
  at.set({ row, answer: '', message: null, status: rowWord(row) });

const say = (at: At): void => {
  const { row, answer } = at.desk;
  if (answer !== '' && at.do({ do: 'say', row, answer: answer.replace(/\.$/, '') }))
    at.set({ answer: '' });
};

const type = (at: At, digit: number): void =>
  at.set({ answer: `${at.desk.answer}${digit}`.slice(0, LONGEST), message: null });

const tray = (at: At): TemplateResult => {
  const { row, answer } = at.desk;
  return html`<div class="line" role="group" aria-label=${words('rows')}>${rowChips(at, (each) => choose(at, each))}
      <span class="grow">${words('rowMakes')}</span>
      <output class="answer" aria-label=${words('rowMakes')}>${typedText(answer, at.work.position.said.rows[String(row)])}</output>
      <button data-do="say" ?disabled=${answer === ''} @click=${() => say(at)}>${words('say')}</button>
      ${finishButton(at, `row:${row}`, 'rowDone')}
    </div>
    ${pad(at, words('rowMakes'), hasPoint(at))}`;
};

const rub = (at: At): void => at.set({ answer: at.desk.answer.slice(0, -1) });

export const row: Tool = {
  id: 'row',
  word: 'moveRow',
  ask: 'askRow',
  picture: rowPicture,
  says: (_at, _next, each) => sentence('nextSay', { row: each }),
  tray,
  press: (at, cell) => {
    if (cell.at === 'square') choose(at, cell.row);
    else if (cell.at === 'right') choose(at, cell.index);
  },
  digit: type,
  point: (at) => {
    const { answer } = at.desk;
    if (!answer.includes('.')) at.set({ answer: `${answer || '0'}.` });
  },
  rub,
  key: (at, cell, key) => {
    if (cell.at !== 'square') return 'unused';
    if (/^\d$/.test(key)) {
      if (at.desk.row !== cell.row) choose(at, cell.row);
      type(at, Number(key));
    } else if (key === 'Enter' && at.desk.answer !== '') say(at);
    else if (key === 'Backspace' || key === 'Delete') rub(at);
    else return 'unused';
    return 'used';
  },
};
