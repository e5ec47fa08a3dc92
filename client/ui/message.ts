import { css, html, LitElement, nothing } from 'lit';
import { words } from '../words/words.ts';
import { buttonStyles } from './buttons.ts';

/**
 * One sentence instead of a page. Properties: `text`; `code` for whoever helps; `action` the words of its one button (empty: none).
 * Event `act`.
 */
export class PwMessage extends LitElement {
  static override properties = { text: {}, code: {}, action: {} };
  static override styles = [
    buttonStyles,
    css`
      :host {
        display: grid;
        gap: 14px;
        justify-items: start;
        max-width: 36rem;
        margin: 0 auto;
        padding: 15vh 1.5rem 2rem;
      }
      h1 {
        margin: 0;
        font-size: 1.375rem;
        font-weight: 400;
      }
      p {
        margin: 0;
        color: var(--soft);
      }
    `,
  ];
  declare text: string;
  declare code: string;
  declare action: string;

  constructor() {
    super();
    this.text = '';
    this.code = '';
    this.action = '';
  }

  protected override render() {
    return html`<h1 role="status">${this.text}</h1>
      ${this.action === '' ? nothing : html`<button class="primary" @click=${() => this.dispatchEvent(new CustomEvent('act'))}>${this.action}</button>`}
      ${this.code === '' ? nothing : html`<p>${words('messageCode', { code: this.code })}</p>`}`;
  }
}

customElements.define('pw-message', PwMessage);
