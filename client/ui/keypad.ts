import { css, html, LitElement } from 'lit';
import { pointSign, words } from '../words/words.ts';
import { buttonStyles } from './buttons.ts';
import { icon } from './icons.ts';

/**
 * Digits to press. Properties: `name` says what the digits are for; `rubs` shows the rubber, `points` the decimal point,
 * `carries` (true, false; null: hidden) whether the next digit is a small one. Events: `digit` (detail: 0..9), `rub`, `point`, `carry`.
 */
export class PwKeypad extends LitElement {
  static override properties = {
    name: {},
    rubs: { type: Boolean },
    points: { type: Boolean },
    carries: { attribute: false },
  };
  static override styles = [
    buttonStyles,
    css`
      div {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(44px, 1fr));
        gap: 6px;
      }
      :host {
        /* Places run from right to left in every script. */
        direction: ltr;
        display: block;
        container-type: inline-size;
      }
      @container (max-width: 560px) {
        div {
          grid-template-columns: repeat(6, 1fr);
        }
        .carry.carry {
          font-size: 0.75rem;
        }
      }
      button {
        padding: 0;
        font-size: 1.25rem;
      }
      /* A digit can be carried by a finger. */
      [data-source] {
        touch-action: none;
      }
      .carry {
        font-size: 0.875rem;
      }
    `,
  ];
  declare name: string;
  declare rubs: boolean;
  declare points: boolean;
  declare carries: boolean | null;

  constructor() {
    super();
    this.name = '';
    this.rubs = false;
    this.points = false;
    this.carries = null;
  }

  private send(event: string, detail?: number): void {
    this.dispatchEvent(new CustomEvent(event, { detail, bubbles: true, composed: true }));
  }

  protected override render() {
    const digits = [1, 2, 3, 4, 5, 6, 7, 8, 9, 0];
    return html`<div role="group" aria-label=${this.name}>
      ${digits.map(
        (digit) =>
          html`<button data-source="digit:${digit}" @click=${() => this.send('digit', digit)}>${digit}</button>`,
      )}
      ${this.points ? html`<button aria-label=${words('point')} @click=${() => this.send('point')}>${pointSign}</button>` : null}
      ${this.carries === null ? null : html`<button class="carry" aria-pressed=${this.carries} @click=${() => this.send('carry')}>${words('carry')}</button>`}
      ${this.rubs ? html`<button class="icon" aria-label=${words('rub')} @click=${() => this.send('rub')}>${icon('rub')}</button>` : null}
    </div>`;
  }
}

customElements.define('pw-keypad', PwKeypad);
