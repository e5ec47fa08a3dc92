import { css, html, LitElement, nothing } from 'lit';
import type { Problem } from '../../engine/child.ts';
import { type Given, NOTHING_GIVEN } from '../problems/address.ts';
import { buttonStyles } from '../ui/buttons.ts';
import { presentWords } from '../words/class-present-words.ts';
import { loadStages } from '../work/stages.ts';
import { openMat } from './open-mat.ts';
import './chooser.ts';
import './note-form.ts';
import './player.ts';

interface Chosen {
  readonly problem: Problem;
  readonly activity: string | null;
}

/**
 * Presentation mode: choose a problem, show it move by move, or lay it by hand on an open mat; at the end a note as a file.
 * Property `given`: the activity's problems, if any. Needs no session.
 */
export class PwPresent extends LitElement {
  static override properties = {
    given: { attribute: false },
    chosen: { state: true },
    ended: { state: true },
    told: { state: true },
  };
  static override styles = [
    buttonStyles,
    css`
      :host {
        display: block;
      }
      .end {
        display: flex;
        flex-wrap: wrap;
        gap: 8px 12px;
        padding: 4px 16px 12px;
      }
      dialog {
        max-width: min(92vw, 34rem);
        padding: 0;
        border: 0;
        border-radius: 10px;
        background: transparent;
        color: var(--ink);
      }
      dialog::backdrop {
        background: rgb(0 0 0 / 45%);
      }
    `,
  ];
  declare given: Given;
  declare chosen: Chosen | null;
  declare ended: boolean;
  declare told: string;
  private mat: HTMLElement | null = null;

  constructor() {
    super();
    this.given = NOTHING_GIVEN;
    this.chosen = null;
    this.ended = false;
    this.told = '';
  }

  private async present(chosen: Chosen): Promise<void> {
    if (!(await loadStages([chosen.problem.stage]))) {
      this.told = presentWords('noNetwork');
      return;
    }
    this.mat = chosen.problem.stage === 'open' ? openMat(chosen.problem) : null;
    this.told = '';
    this.ended = this.mat !== null;
    this.chosen = chosen;
    scrollTo(0, 0);
  }

  /** Once all was shown, the teacher may note it; and at any time another problem may be chosen. */
  private onward({ problem, activity }: Chosen) {
    const dialog = () => this.renderRoot.querySelector('dialog');
    const another = () => {
      this.chosen = null;
    };
    return html`
      ${this.ended ? html`<button class="primary" data-do="openNote" @click=${() => dialog()?.showModal()}>${presentWords('noteTitle')}</button>` : nothing}
      <button data-do="choose" @click=${another}>${presentWords('choose')}</button>
      <dialog aria-label=${presentWords('noteTitle')}>
        <pw-note-form .problem=${problem} .activity=${activity} @close=${() => dialog()?.close()}></pw-note-form>
      </dialog>`;
  }

  protected override render() {
    const { chosen } = this;
    if (chosen === null)
      return html`<pw-chooser
        .given=${this.given}
        .told=${this.told}
        @chosen=${(event: CustomEvent<Chosen>) => void this.present(event.detail)}
      ></pw-chooser>`;
    if (this.mat !== null) return html`${this.mat}<div class="end">${this.onward(chosen)}</div>`;
    const last = () => {
      this.ended = true;
    };
    return html`<pw-player .problem=${chosen.problem} @last=${last}>${this.onward(chosen)}</pw-player>`;
  }
}

customElements.define('pw-present', PwPresent);
