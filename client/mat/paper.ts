import { css, html, LitElement } from 'lit';
import { buttonStyles } from '../ui/buttons.ts';
import { icon } from '../ui/icons.ts';
import { placeWord, pointSign, words } from '../words/words.ts';

export interface PaperCell {
  readonly place: number;
  readonly digit: number | null;
  readonly again: boolean;
  readonly active: boolean;
  readonly marked: boolean;
  /** The decimal point stands behind this digit. */
  readonly point: boolean;
}

export interface PaperView {
  /** The two numbers as they are written. */
  readonly multiplicand: string;
  readonly multiplier: string;
  /** Partial products as said, by row from below. */
  readonly said: readonly {
    readonly row: number;
    readonly answer: string;
    readonly again: boolean;
  }[];
  /** Cells of the product, highest place first. */
  readonly product: readonly PaperCell[];
}

/** One character a square; a point has none of its own, it stands behind its digit. */
const charsOf = (written: string): string[] =>
  [...written.matchAll(/\d\.?/g)].map(([text]) => text.replace('.', pointSign));

/**
 * Squared paper: the problem, what was said of each row, and the product line, written digit by digit.
 * Property `view`. Events: `line-cell` (detail: place), `line-key` (detail: { place, event }).
 */
export class PwPaper extends LitElement {
  static override properties = { view: { attribute: false } };
  static override styles = [
    buttonStyles,
    css`
      :host {
        display: block;
        min-width: 0;
      }
      .sheet {
        --cell: min(40px, calc((100cqw - 22px) / var(--cells)));
        box-sizing: border-box;
        padding: 10px;
        border: 1px solid var(--rule);
        border-radius: 8px;
        background: var(--surface);
      }
      .box {
        container-type: inline-size;
      }
      .line {
        display: flex;
        justify-content: flex-end;
        font-size: 1.375rem;
        line-height: 32px;
      }
      .line span {
        box-sizing: border-box;
        width: var(--cell);
        height: 33px;
        border: solid var(--rule);
        border-width: 1px 0 0 1px;
        text-align: center;
      }
      .line span:last-child {
        border-right-width: 1px;
      }
      @media (max-width: 700px) {
        .line:not(.product),
        .rule {
          display: none;
        }
        .sheet {
          --cell: calc((100cqw - 22px) / var(--cells));
        }
      }
      .rule {
        height: 2.5px;
        margin-left: auto;
        width: calc(var(--cell) * var(--cells));
        background: var(--ink);
      }
      .again {
        color: var(--again);
        font-weight: 700;
        background: var(--again-tint);
      }
      .line {
        position: relative;
      }
      .line svg {
        position: absolute;
        top: 6px;
        left: 0;
        width: 20px;
        height: 20px;
      }
      .line button {
        width: var(--cell);
        min-width: 0;
        padding: 0;
        border: 1.5px dashed var(--line);
        border-radius: 6px;
        background: var(--surface);
        font-size: 1.375rem;
      }
      .point {
        position: absolute;
        right: -4px;
      }
      .line button {
        position: relative;
      }
      .line button.written {
        border-style: solid;
      }
      .line button[aria-pressed='true'] {
        border: 3px solid var(--focus);
        background: var(--surface);
        color: var(--ink);
      }
      .line button.marked {
        border: 3px dashed var(--ink);
      }
      .line button.again {
        color: var(--again);
        border: 3px solid var(--again);
        transform: translateY(-6px);
        background: var(--again-tint);
        box-shadow: 3px 8px 6px rgb(0 0 0 / 45%);
      }
    `,
  ];
  declare view: PaperView;

  /** Brings the focus to a place of the product. */
  focusPlace(place: number): void {
    this.renderRoot.querySelector<HTMLElement>(`[data-place="${place}"]`)?.focus();
  }

  private key(event: KeyboardEvent, place: number): void {
    const to = { ArrowLeft: place + 1, ArrowRight: place - 1 }[event.key];
    if (to !== undefined) {
      event.preventDefault();
      this.focusPlace(to);
    } else this.dispatchEvent(new CustomEvent('line-key', { detail: { place, event } }));
  }

  private cell(cell: PaperCell, tabStop: boolean) {
    const plain = words('productCell', {
      place: placeWord(cell.place),
      digit: cell.digit ?? words('noDigit'),
    });
    const name = cell.point ? words('pointAfter', { cell: plain }) : plain;
    const classes = `${cell.digit === null ? '' : 'written'} ${cell.again ? 'again' : ''} ${cell.marked ? 'marked' : ''}`;
    return html`<button
      class=${classes}
      data-place=${cell.place}
      tabindex=${tabStop ? 0 : -1}
      aria-pressed=${cell.active}
      aria-label=${cell.again ? `${name}, ${words('again')}` : name}
      @click=${() => this.dispatchEvent(new CustomEvent('line-cell', { detail: cell.place }))}
      @keydown=${(event: KeyboardEvent) => this.key(event, cell.place)}
    >${cell.digit ?? ''}${cell.point ? html`<b class="point">${pointSign}</b>` : ''}</button>`;
  }

  protected override render() {
    const { view } = this;
    const cells = Math.max(view.product.length, charsOf(view.multiplicand).length + 1);
    const digits = (list: readonly string[]) =>
      [...Array<string>(Math.max(0, cells - list.length)).fill(''), ...list].map(
        (digit) => html`<span>${digit}</span>`,
      );
    const stop = Math.max(
      0,
      view.product.findIndex((cell) => cell.active),
    );
    return html`<div class="box"><div class="sheet" .style=${`--cells:${cells}`}>
      <div class="line">${digits(charsOf(view.multiplicand))}</div>
      <div class="line">${digits(['×', ...charsOf(view.multiplier)])}</div>
      <div class="rule"></div>
      ${view.said.map(
        ({ answer, again }) =>
          html`<div class="line ${again ? 'again' : ''}">${again ? icon('look') : ''}${digits(charsOf(answer))}</div>`,
      )}
      ${view.said.length > 0 ? html`<div class="rule"></div>` : ''}
      <div class="line product" role="group" aria-label=${words('productLine')}>${view.product.map((cell, i) => this.cell(cell, i === stop))}</div>
    </div></div>`;
  }
}

customElements.define('pw-paper', PwPaper);
