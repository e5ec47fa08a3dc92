import { html, svg, type TemplateResult } from 'lit';
import type { Square, Work } from '../../../engine/child.ts';
import { icon } from '../../ui/icons.ts';
import { words } from '../../words/words.ts';
import { ownerOf } from '../belonging.ts';
import { beads, box, picture, way } from '../pictures.ts';
import { sentence } from '../says.ts';
import type { At, Tool } from '../tool.ts';
import { pickBar } from './lay.ts';
import '../../mat/tray.ts';

const factPicture = picture([
  box(42, 36, 36),
  box(82, 36, 36),
  ...beads(60, 54, 1, 9),
  ...beads(92, 54, 2, 9),
  svg`<text x="80" y="22">3 × 4</text>`,
  way('M72 28 62 36M88 28 98 36'),
]);

/** The fact that follows: along the row to the left, then the next row; `by` −1 goes back. */
const besideFact = ({ problem }: Work, [row, column]: Square, by: number): Square => {
  const across = problem.multiplicand.digits.length;
  const all = across * problem.multiplier.digits.length;
  const at = (row * across + Math.min(column, across - 1) + by + all) % all;
  return [Math.floor(at / across), at % across];
};

const turn = (at: At, by: number): void =>
  at.set({ fact: besideFact(at.work, at.desk.fact, by), held: null, message: null });

const layBar = (at: At, square: Square, kind: number): void => {
  if (at.do({ do: 'layBars', square, kind, count: 1, of: at.desk.fact })) at.set({ held: null });
};

const digitOr = (digit: number | null | undefined): string => (digit == null ? '?' : `${digit}`);

const factText = ({ work, desk }: At): string => {
  const { bottom, right } = work.position.tiles;
  const [row, column] = desk.fact;
  return words('problem', {
    multiplicand: digitOr(bottom[column]),
    multiplier: digitOr(right[row]),
  });
};

const tray = (at: At): TemplateResult => html`<div class="line">
    <button class="icon" data-do="factBefore" aria-label=${words('factBefore')} @click=${() => turn(at, -1)}>${icon('right')}</button>
    <output class="answer" aria-label=${words('factNow')}>${factText(at)}</output>
    <button class="primary" data-do="factNext" @click=${() => turn(at, 1)}>${words('factNext')}</button>
    <span>${words('pressFact')}</span>
  </div>
  <pw-tray
    .kind=${at.desk.held?.what === 'bars' ? at.desk.held.kind : null}
    .count=${null}
    @kind=${(event: CustomEvent<number>) => pickBar(at, event.detail)}
  ></pw-tray>`;

/** Bars of a known fact: which fact they belong to is chosen first, because units and tens lie on two squares. */
export const fact: Tool = {
  id: 'fact',
  word: 'moveLay',
  ask: 'askFact',
  picture: factPicture,
  says: (_at, _next, row) => sentence('nextFact', { row }),
  tray,
  owner: ({ work, desk }, square, kind) => ownerOf(work, square, kind, desk.fact),
  press: (at, cell) => {
    const { held } = at.desk;
    if (cell.at !== 'square') return;
    const square: Square = [cell.row, cell.column];
    if (held?.what === 'bars') layBar(at, square, held.kind);
    else at.set({ fact: square, message: null });
  },
  drop: (at, source, cell) => {
    if (source.what === 'bar' && cell.at === 'square')
      layBar(at, [cell.row, cell.column], source.kind);
  },
  key: (at, cell, key) => {
    if (cell.at !== 'square') return 'unused';
    if (key === 'Enter') at.set({ fact: [cell.row, cell.column], message: null });
    else if (/^[1-9]$/.test(key)) layBar(at, [cell.row, cell.column], Number(key));
    else return 'unused';
    return 'used';
  },
};
