import { html, nothing, type TemplateResult } from 'lit';
import { numeral, rowWord, words } from '../words/words.ts';
import type { DeskController } from './desk.ts';
import type { Tool } from './moves.ts';
import { openingPicture, slidingPicture } from './pictures.ts';
import { pickBar, pressDigit, pressPoint, rubOut, sayRow } from './presses.ts';
import '../mat/tray.ts';
import '../ui/keypad.ts';

const pad = (at: DeskController, name: string, points = false) => html`<pw-keypad
  .name=${name}
  ?rubs=${true}
  @digit=${(event: CustomEvent<number>) => pressDigit(at, event.detail)}
  .points=${points}
  @point=${() => pressPoint(at)}
  @rub=${() => rubOut(at)}
></pw-keypad>`;

/** A number with digits after its point makes a product with some. */
const hasPoint = ({ work }: DeskController): boolean => work.problem.mat.origin < 0;

const tiles = (at: DeskController) =>
  html`<p class="ask">${words('pickTile')}</p>${pad(at, words('digits'))}`;

const lay = (at: DeskController) => html`<pw-tray
  .kind=${at.desk.held?.what === 'bars' ? at.desk.held.kind : null}
  .count=${at.desk.howMany}
  @kind=${(event: CustomEvent<number>) => pickBar(at, event.detail)}
  @how-many=${(event: CustomEvent<number>) => at.set({ howMany: event.detail })}
></pw-tray>`;

const rowChips = (at: DeskController) =>
  at.work.problem.multiplier.digits.map((_, row) => {
    const again = at.work.lifted.some((lifted) => lifted.row === row);
    const done = at.work.finished.rows.includes(row);
    return html`<button
      class=${again ? 'again' : ''}
      aria-pressed=${at.desk.row === row}
      @click=${() => at.set({ row, answer: '', message: null })}
    >${rowWord(row)}${done && !again ? ' ✓' : ''}${again ? html`<span class="unseen">, ${words('again')}</span>` : nothing}</button>`;
  });

const row = (at: DeskController) => {
  const { row: chosen, answer } = at.desk;
  const said = at.work.position.said.rows[String(chosen)];
  return html`<div class="line" role="group" aria-label=${words('rows')}>${rowChips(at)}
      <span class="grow">${words('rowMakes')}</span>
      <output class="answer" aria-label=${words('rowMakes')}>${answer === '' ? (said === undefined ? '' : numeral(said)) : answer}</output>
      <button data-do="say" ?disabled=${answer === ''} @click=${() => sayRow(at)}>${words('say')}</button>
      <button class="primary" data-do="finishRow" @click=${() => at.do({ do: 'finish', what: `row:${chosen}` })}>${words('rowDone')}</button>
    </div>
    ${pad(at, words('rowMakes'), hasPoint(at))}`;
};

const finishButton = (at: DeskController) => {
  const { finished, lifted } = at.work;
  const product = html`<button class="primary" data-do="finishProduct" @click=${() => at.do({ do: 'finish', what: 'product' })}>${words('productDone')}</button>`;
  const problem = (label: 'problemDone' | 'leaveIt', look: string) =>
    html`<button class=${look} data-do="finishProblem" @click=${() => at.do({ do: 'finish', what: 'problem' })}>${words(label)}</button>`;
  if (!finished.product) return product;
  return lifted.length > 0
    ? html`${problem('leaveIt', '')}${product}`
    : problem('problemDone', 'primary');
};

const read = (at: DeskController) =>
  html`<div class="line"><span class="grow">${words('pressDigit')}</span>${finishButton(at)}</div>${pad(at, words('digits'), hasPoint(at))}`;

const ask = (id: 'pressSquare' | 'pressPile', picture: TemplateResult) => () =>
  html`<div class="line"><span class="grow">${words(id)}</span>${picture}</div>`;

const TRAYS: Record<Tool, (at: DeskController) => TemplateResult> = {
  tiles,
  lay,
  count: ask('pressSquare', openingPicture),
  row,
  slide: ask('pressPile', slidingPicture),
  read,
};

/** What lies in front of the child for the chosen move. */
export const trayOf = (at: DeskController): TemplateResult => TRAYS[at.desk.tool](at);
