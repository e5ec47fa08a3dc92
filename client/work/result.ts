import { css, html, LitElement, nothing } from 'lit';
import type { Status, Work } from '../../engine/child.ts';
import { type Outcome, readOutcome } from '../api/attempt.ts';
import { buttonStyles } from '../ui/buttons.ts';
import { numeral, type WordId, words } from '../words/words.ts';
import { savingOf } from './header.ts';
import { marksText } from './marks-text.ts';
import { stepBead, stepBeadStyles } from './step-bead.ts';
import type { WorkStore } from './work-store.ts';

const KINDS: readonly (readonly [Status, WordId])[] = [
  ['first', 'resultAtOnce'],
  ['follows', 'resultFollows'],
  ['corrected', 'resultMended'],
  ['hinted', 'resultHinted'],
  ['notRight', 'resultNotRight'],
  ['open', 'resultOpen'],
];

const countOf = (work: Work, status: Status): number =>
  work.steps.filter((step) => step.status === status).length;

/**
 * A child's own result: each step of each problem a bead whose form tells how it went, and the score once the server has it.
 * Property `store`. Event `back`: to look at the work again.
 */
export class PwResult extends LitElement {
  static override properties = { store: { attribute: false }, outcome: { state: true } };
  static override styles = [
    buttonStyles,
    stepBeadStyles,
    css`
      :host {
        display: block;
        max-width: 860px;
        margin: 0 auto;
        padding: 20px 16px 32px;
      }
      h1 {
        margin: 0 0 4px;
        font-size: 1.5rem;
        font-weight: 400;
      }
      h2 {
        margin: 0;
        font-size: 1.25rem;
        font-weight: 400;
        white-space: nowrap;
      }
      article {
        display: grid;
        gap: 10px;
        margin-top: 14px;
        padding: 14px 16px;
        border: 1.5px solid var(--cloth-line);
        border-radius: 12px;
        background: var(--tray);
      }
      .steps {
        display: flex;
        flex-wrap: wrap;
        gap: 6px 4px;
      }
      ul {
        display: flex;
        flex-wrap: wrap;
        gap: 6px 20px;
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        display: inline-flex;
        gap: 7px;
        align-items: center;
      }
      .score {
        font-size: 1.25rem;
      }
      .loud {
        padding: 6px 10px;
        border-radius: 8px;
        background: var(--again-tint);
        color: var(--again);
      }
      button {
        margin-top: 20px;
      }
    `,
  ];
  declare store: WorkStore;
  declare outcome: Outcome | null;
  private timer: ReturnType<typeof setInterval> | undefined;

  constructor() {
    super();
    this.outcome = null;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    void this.ask();
    this.timer = setInterval(() => void this.ask(), 3_000);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearInterval(this.timer);
  }

  protected override firstUpdated(): void {
    this.renderRoot.querySelector<HTMLElement>('h1')?.focus();
  }

  /** Asks again until the mark has arrived where it is to go; never before all work is saved. */
  private async ask(): Promise<void> {
    this.requestUpdate();
    if (this.store.unsentCount > 0) return;
    const reply = await readOutcome(this.store.attempt.id);
    if (!reply.ok) return;
    this.outcome = reply.value;
    const moving = ['waiting', 'sending'].includes(reply.value.delivery.state);
    if (reply.value.released && !moving) clearInterval(this.timer);
  }

  private get released(): boolean {
    return this.outcome?.released ?? this.store.attempt.release === 'onFinish';
  }

  private state() {
    const { outcome, store } = this;
    if (store.unsentCount > 0) {
      const { text, calm } = savingOf(store);
      return html`<p class="loud" role="status">${calm ? words('resultUnsent') : text}</p>`;
    }
    if (!this.released) return html`<p role="status">${words('resultByTeacher')}</p>`;
    if (outcome === null || !store.attempt.graded)
      return html`<p role="status">${words('saved')}</p>`;
    const sent = outcome.delivery.state === 'sent';
    return html`<p role="status" data-delivery=${outcome.delivery.state}>${words(sent ? 'resultSent' : 'resultWaiting')}</p>`;
  }

  private problem(work: Work) {
    const name = words('problem', {
      multiplicand: numeral(work.problem.multiplicand.text),
      multiplier: numeral(work.problem.multiplier.text),
    });
    const kinds = KINDS.map(([status, word]) => ({ status, word, count: countOf(work, status) }));
    return html`<article>
      <h2 dir="ltr">${name}</h2>
      ${
        this.released
          ? html`<div class="steps" aria-hidden="true">${work.steps.map(({ status }) => stepBead(status))}</div>
            <ul>${kinds
              .filter(({ count }) => count > 0)
              .map(
                ({ status, word, count }) =>
                  html`<li>${stepBead(status)}<span>${count} ${words(word)}</span></li>`,
              )}</ul>`
          : nothing
      }
    </article>`;
  }

  protected override render() {
    const score = this.outcome?.score ?? null;
    return html`<h1 tabindex="-1">${words('resultTitle')}</h1>
      ${score === null ? nothing : html`<p class="score" data-score>${words('resultScore', { awarded: marksText(score.awarded), available: marksText(score.available) })}</p>`}
      ${this.state()}${this.store.works.map((work) => this.problem(work))}
      <button data-do="back" @click=${() => this.dispatchEvent(new CustomEvent('back'))}>${words('goBack')}</button>`;
  }
}

customElements.define('pw-result', PwResult);
