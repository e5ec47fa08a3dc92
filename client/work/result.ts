import { css, html, LitElement, nothing } from 'lit';
import type { Status, Work } from '../../engine/child.ts';
import { type Outcome, readOutcome } from '../api/attempt.ts';
import { buttonStyles } from '../ui/buttons.ts';
import '../words/result-words.ts';
import { numbersText, type WordId, words } from '../words/words.ts';
import { freshDesk } from './desk.ts';
import { savingOf } from './header.ts';
import { marksText } from './marks-text.ts';
import { pageOf } from './pages.ts';
import { Round, toWorkAgain } from './round.ts';
import { stepBead, stepBeadStyles } from './step-bead.ts';
import { matViewOf, paperViewOf } from './view-of.ts';
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

const nameOf = ({ problem }: Work): string => {
  if (problem.stage === 'walk') return words('moveWalk');
  if (problem.multiplier.digits.length === 0) return words('mat');
  return numbersText(problem);
};

/**
 * A child's own result: each step of each problem a bead whose form tells how it went, and the score once the server has it.
 * Their own mat and paper stand beside it. Properties `store`, `round` (the last further round, if there was one).
 * Events: `back` (to look at the work again), `again` (detail: Round, on what was not right).
 */
export class PwResult extends LitElement {
  static override properties = {
    store: { attribute: false },
    round: { attribute: false },
    outcome: { state: true },
  };
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
      .own {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 12px;
        align-items: start;
      }
      .own {
        --page: var(--tray);
      }
      .own pw-mat {
        height: 310px;
      }
      .own pw-paper {
        min-width: 240px;
      }
      @media (max-width: 700px) {
        .own {
          grid-template-columns: minmax(0, 1fr);
        }
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
      /* By tens, so that they can be counted. */
      .steps {
        display: grid;
        grid-template-columns: repeat(20, min-content);
        gap: 6px 4px;
      }
      .steps > :nth-child(20n + 10) {
        margin-right: 8px;
      }
      @media (max-width: 480px) {
        .steps {
          grid-template-columns: repeat(10, min-content);
        }
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
  declare round: Round | null;
  declare outcome: Outcome | null;
  private timer: ReturnType<typeof setInterval> | undefined;

  constructor() {
    super();
    this.round = null;
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

  /** The work as it was left, to be looked at only. */
  private own(work: Work) {
    const page = pageOf(work.problem.stage);
    const desk = freshDesk(0, work);
    const asks = work.problem.prompts.length > 0;
    return html`<div class="own" inert>
      ${page.mat ? html`<pw-mat .view=${matViewOf(work, desk)}></pw-mat>` : nothing}
      ${asks ? nothing : html`<pw-paper whole .view=${paperViewOf(work, desk, page.tools(work.problem))}></pw-paper>`}
    </div>`;
  }

  private steps(work: Work) {
    const kinds = KINDS.map(([status, word]) => ({ status, word, count: countOf(work, status) }));
    return html`<div class="steps" aria-hidden="true">${work.steps.map(({ status }) => stepBead(status))}</div>
      <ul>${kinds
        .filter(({ count }) => count > 0)
        .map(
          ({ status, word, count }) =>
            html`<li>${stepBead(status)}<span>${count} ${words(word)}</span></li>`,
        )}</ul>`;
  }

  private problem(work: Work) {
    return html`<article>
      <h2 dir="ltr">${nameOf(work)}</h2>
      ${this.released ? html`${this.steps(work)}${this.own(work)}` : nothing}
    </article>`;
  }

  /** What the further round came to, and the way to one. */
  private further() {
    if (!this.released) return nothing;
    const done = (this.round?.works ?? []).filter(({ finished }) => finished.problem);
    const again = () => {
      const detail = new Round(this.store, () => this.requestUpdate());
      this.dispatchEvent(new CustomEvent('again', { detail }));
    };
    return html`${done.map(
      (work) => html`<article>
        <h2 dir="ltr">${nameOf(work)}</h2>
        <p>${words('thisRound')}</p>
        ${this.steps(work)}
      </article>`,
    )}
    ${toWorkAgain(this.store.works).length === 0 ? nothing : html`<button class="primary" data-do="again" @click=${again}>${words('workAgain')}</button>`}`;
  }

  protected override render() {
    const score = this.outcome?.score ?? null;
    return html`<h1 tabindex="-1">${words('resultTitle')}</h1>
      ${score === null ? nothing : html`<p class="score" data-score>${words('resultScore', { awarded: marksText(score.awarded), available: marksText(score.available) })}</p>`}
      ${this.state()}${this.store.works.map((work) => this.problem(work))}
      ${this.further()}
      <button data-do="back" @click=${() => this.dispatchEvent(new CustomEvent('back'))}>${words('goBack')}</button>`;
  }
}

customElements.define('pw-result', PwResult);
