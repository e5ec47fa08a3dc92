import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import type { Problem, Suggestion } from '../../engine/child.ts';
import type { PwMat } from '../mat/mat.ts';
import { showTravel } from '../mat/travel.ts';
import { buttonStyles } from '../ui/buttons.ts';
import { icon } from '../ui/icons.ts';
import { presentWords } from '../words/class-present-words.ts';
import { captionOf, openingOf } from './captions.ts';
import { stepOfKey } from './keys.ts';
import { Reel } from './reel.ts';
import { sceneOf } from './scene.ts';
import '../mat/mat.ts';
import '../mat/paper.ts';

/**
 * A problem worked move by move, forward and back, at whoever's pace. Its stage must be loaded.
 * Properties `problem`, `intro` (a sentence before the first move). Event `last`: the last move is shown.
 * Slotted content stands beside the other buttons.
 */
export class PwPlayer extends LitElement {
  static override properties = {
    problem: { attribute: false },
    intro: {},
    at: { state: true },
    captions: { state: true },
  };
  static override styles = [
    buttonStyles,
    css`
      :host {
        display: block;
      }
      .page {
        display: grid;
        grid-template-rows: minmax(0, 1fr) auto auto;
        gap: 10px;
        box-sizing: border-box;
        height: 100dvh;
        padding: 12px 16px;
      }
      .scene {
        display: grid;
        grid-template-columns: minmax(0, 1fr) minmax(220px, 28vw);
        gap: 16px;
        min-height: 0;
      }
      .scene.only {
        grid-template-columns: minmax(0, 1fr);
      }
      pw-mat {
        place-items: center;
      }
      pw-paper {
        align-self: center;
        max-height: 100%;
        overflow: auto;
      }
      .scene.only pw-paper {
        zoom: 1.5;
        justify-self: center;
        min-width: min(100%, 30rem);
      }
      .caption {
        min-height: 2.6em;
        margin: 0;
        font-size: clamp(1.25rem, 2.6vw, 2.5rem);
        font-weight: 400;
        line-height: 1.3;
        text-align: center;
        text-wrap: balance;
      }
      .controls {
        display: flex;
        flex-wrap: wrap;
        gap: 8px 12px;
        align-items: center;
        justify-content: center;
      }
      .controls .step {
        display: inline-flex;
        gap: 10px;
        align-items: center;
        justify-content: center;
        min-width: clamp(112px, 20vw, 240px);
        min-height: 60px;
        font-size: 1.25rem;
      }
      .controls .other {
        display: flex;
        flex-wrap: wrap;
        gap: 8px 12px;
        align-items: center;
      }
      .at {
        min-width: 9.5em;
        color: var(--soft);
        text-align: center;
      }
      @media (min-width: 1200px) and (min-height: 700px) {
        pw-paper {
          zoom: 1.3;
        }
        .scene.only pw-paper {
          zoom: 2;
        }
      }
      @media (max-width: 640px) {
        .scene {
          grid-template-columns: minmax(0, 1fr);
          grid-template-rows: minmax(0, 1fr) auto;
        }
        .controls .step {
          flex: 1 1 40%;
          min-width: 0;
        }
        .at {
          order: 1;
          flex: 1 0 100%;
        }
        .controls .other {
          order: 2;
          justify-content: center;
        }
      }
    `,
  ];
  declare problem: Problem;
  declare intro: string;
  declare at: number;
  declare captions: boolean;
  private reel!: Reel;

  constructor() {
    super();
    this.intro = '';
    this.at = 0;
    this.captions = true;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('keydown', this.key, { capture: true });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('keydown', this.key, { capture: true });
  }

  /** The heading takes the focus, so that keys and ears begin at the top. */
  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('h1')?.focus();
  }

  private readonly key = (event: KeyboardEvent): void => {
    const step = stepOfKey(event);
    if (step === null) return;
    event.preventDefault();
    event.stopPropagation();
    this.go(step === 'first' ? 0 : step === 'last' ? this.reel.length : this.at + step);
  };

  private go(to: number): void {
    const at = Math.min(Math.max(to, 0), this.reel.length);
    const forward = at === this.at + 1;
    this.at = at;
    if (forward) void this.updateComplete.then(() => this.showMove());
    if (at === this.reel.length) this.dispatchEvent(new CustomEvent('last'));
  }

  private get move(): Suggestion | null {
    return this.reel.moves[this.at - 1] ?? null;
  }

  private showMove(): void {
    const mat = this.renderRoot.querySelector<PwMat>('pw-mat');
    showTravel(mat, this.move?.action, this.reel.workAt(this.at));
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('problem')) return;
    this.reel = new Reel(this.problem);
    this.at = 0;
  }

  private scene() {
    const after = this.reel.workAt(this.at);
    const before = this.at === 0 ? after : this.reel.workAt(this.at - 1);
    const { mat, paper } = sceneOf(before, after, this.move);
    return html`<div class=${mat !== null && paper !== null ? 'scene' : 'scene only'}>
      ${mat === null ? nothing : html`<pw-mat .view=${mat}></pw-mat>`}
      ${paper === null ? nothing : html`<pw-paper whole .view=${paper}></pw-paper>`}
    </div>`;
  }

  private step(by: 1 | -1) {
    const forward = by === 1;
    const over = forward ? this.at === this.reel.length : this.at === 0;
    const word = presentWords(forward ? 'forward' : 'back');
    const arrow = icon(forward ? 'right' : 'left');
    return html`<button
      class=${forward ? 'step primary' : 'step'}
      data-do=${forward ? 'forward' : 'back'}
      aria-disabled=${over}
      @click=${() => this.go(this.at + by)}
    >${forward ? html`${word}${arrow}` : html`${arrow}${word}`}</button>`;
  }

  protected override render() {
    const { move } = this;
    const opening = openingOf(this.problem);
    const caption = move === null ? `${this.intro} ${opening}` : captionOf(move, this.problem);
    const all = this.reel.length;
    return html`<div class="page" dir="ltr">
      ${this.scene()}
      <h1 class="unseen" tabindex="-1">${this.intro} ${opening}</h1>
      <p class=${this.captions ? 'caption' : 'unseen'} role="status" dir="auto">${caption}</p>
      <div class="controls">
        ${this.step(-1)}<span class="at">${presentWords('at', { at: this.at, all })}</span>${this.step(1)}
        <span class="other">
          <button data-do="start" @click=${() => this.go(0)}>${presentWords('toStart')}</button>
          <button data-do="captions" aria-pressed=${this.captions} @click=${() => {
            this.captions = !this.captions;
          }}>${presentWords('captions')}</button>
          <slot></slot>
        </span>
      </div>
    </div>`;
  }
}

customElements.define('pw-player', PwPlayer);
