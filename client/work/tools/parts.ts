import { html, nothing, type TemplateResult } from 'lit';
import type { Finishable } from '../../../engine/child.ts';
import { numeral, rowWord, type WordId, words } from '../../words/words.ts';
import type { At } from '../tool.ts';
import '../../ui/keypad.ts';

/** A number with digits after its point makes a product with some. */
export const hasPoint = ({ work }: At): boolean => work.problem.mat.origin < 0;

/** The keypad, for whatever the chosen move asks. */
export const pad = (at: At, name: string, points = false): TemplateResult => {
  const { tool } = at;
  return html`<pw-keypad
    .name=${name}
    ?rubs=${true}
    .points=${points}
    .carries=${tool.carries ? at.desk.carries : null}
    @digit=${(event: CustomEvent<number>) => tool.digit?.(at, event.detail)}
    @point=${() => tool.point?.(at)}
    @rub=${() => tool.rub?.(at)}
    @carry=${() => at.set({ carries: !at.desk.carries })}
  ></pw-keypad>`;
};

/** What is typed just now, or what was said before; whole numbers in groups, so that their zeros can be counted. */
export const typedText = (answer: string, said: unknown): string => {
  const text = answer === '' && typeof said === 'string' ? said : answer;
  return /^\d+(\.\d+)?$/.test(text) ? numeral(text) : text;
};

export const finishButton = (
  at: At,
  what: Finishable,
  word: WordId,
  look = 'primary',
): TemplateResult => {
  const name = what.startsWith('row:')
    ? 'finishRow'
    : `finish${what === 'product' ? 'Product' : 'Problem'}`;
  return html`<button class=${look} data-do=${name} @click=${() => at.do({ do: 'finish', what })}>${words(word)}</button>`;
};

/** Without numbers, one row a row of the mat. */
const rowsOf = ({ work }: At): number =>
  work.problem.multiplier.digits.length || work.problem.mat.rows;

/** The digit that a row is worked with; null: it is not known yet. */
const digitOf = ({ work }: At, row: number): number | null =>
  (work.problem.stage === 'paper'
    ? work.problem.multiplier.digits[row]
    : work.position.tiles.right[row]) ?? null;

/** A row is told by its digit, which takes less room than which of the rows it is; that is said as well. */
const rowName = (at: At, row: number): TemplateResult | string => {
  const digit = digitOf(at, row);
  if (digit === null) return rowWord(row);
  return html`<span class="unseen">${rowWord(row)}, </span>${words('times', { digit })}`;
};

/** The rows to choose from: which are done, and which are to be looked at again. `choose` is what a press does. */
export const rowChips = (at: At, choose: (row: number) => void): TemplateResult[] =>
  Array.from({ length: rowsOf(at) }, (_, row) => {
    const again = at.work.lifted.some((lifted) => lifted.row === row);
    const done = at.work.finished.rows.includes(row) && !again;
    return html`<button
      class=${again ? 'again' : ''}
      aria-pressed=${at.desk.row === row}
      @click=${() => choose(row)}
    >${rowName(at, row)}${done ? ' ✓' : ''}${again ? html`<span class="unseen">, ${words('again')}</span>` : nothing}</button>`;
  });
