import { css, html, LitElement, nothing } from 'lit';
import { buttonStyles } from '../ui/buttons.ts';
import { words } from '../words/words.ts';
import './bar.ts';

const KINDS = [1, 2, 3, 4, 5, 6, 7, 8, 9];

/**
 * The tray of bars with how many to lay at once. Properties: `kind` (in the hand, null: none), `count` (null: always one).
 * Events: `kind` (detail: 1..9), `how-many` (detail: 1..9). Bars can also be dragged: `data-source="bar:KIND"`.
 */
export class PwTray extends LitElement {
  static override properties = { kind: { attribute: false }, count: { attribute: false } };
  static override styles = [
    buttonStyles,
    css`
      :host {
        /* Places run from right to left in every script. */
        direction: ltr;
        display: grid;
        gap: 8px;
        min-width: 0;
      }
      .bars {
        display: flex;
        flex-wrap: wrap;
        gap: 6px;
      }
      .bar {
        display: grid;
        flex: 1 1 auto;
        grid-template-rows: 20px auto;
        place-items: center;
        min-width: 44px;
        padding: 5px 6px 3px;
        touch-action: none;
      }
      .bar[aria-pressed='true'] {
        border-color: var(--focus);
        background: var(--surface);
        color: var(--ink);
        box-shadow: inset 0 0 0 1.5px var(--focus);
        transform: translateY(-4px);
      }
      .bar[aria-pressed='true'] span {
        font-weight: 700;
      }
      .many {
        display: flex;
        flex-wrap: wrap;
        gap: 6px;
        align-items: center;
      }
      .many button {
        flex: 1 1 44px;
        max-width: 60px;
        padding: 0;
      }
      @media (max-width: 560px) {
        .bar {
          flex-basis: 27%;
          padding-inline: 0;
        }
        .many span {
          flex-basis: 100%;
        }
        .many button {
          flex-basis: 17%;
          max-width: none;
        }
      }
    `,
  ];
  declare kind: number | null;
  declare count: number | null;

  constructor() {
    super();
    this.kind = null;
    this.count = 1;
  }

  private send(event: 'kind' | 'how-many', detail: number): void {
    this.dispatchEvent(new CustomEvent(event, { detail, bubbles: true, composed: true }));
  }

  private bar(kind: number) {
    return html`<button
      class="bar"
      data-source="bar:${kind}"
      aria-pressed=${this.kind === kind}
      aria-label=${words('barKind', { kind })}
      @click=${() => this.send('kind', kind)}
    >
      <pw-bar .kind=${kind} .bead=${9.5}></pw-bar><span>${kind}</span>
    </button>`;
  }

  private many(count: number) {
    return html`<button aria-pressed=${this.count === count} @click=${() => this.send('how-many', count)}>${count}</button>`;
  }

  protected override render() {
    return html`<div class="bars" role="group" aria-label=${words('bars')}>${KINDS.map((kind) => this.bar(kind))}</div>
      ${this.count === null ? nothing : this.manyRow()}`;
  }

  private manyRow() {
    return html`<div class="many" role="group" aria-label=${words('howMany')}>
        <span>${words('howMany')}</span>${KINDS.map((count) => this.many(count))}
      </div>`;
  }
}

customElements.define('pw-tray', PwTray);
