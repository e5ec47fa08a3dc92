import { css, html, LitElement, nothing } from 'lit';
import type { Problem } from '../../engine/child.ts';
import { type Attempt, chooseProblem } from '../api/attempt.ts';
import { buttonStyles } from '../ui/buttons.ts';
import { numberInWords } from '../words/number-words.ts';
import { numbersText, pointSign, words } from '../words/words.ts';
import '../words/choice-words.ts';
import { type Sentence, sentence } from './says.ts';
import { playable } from './work-store.ts';

/** Where numbers are told in words, writing them in figures is the work itself. */
const inWords = ({ stage, multiplicand, multiplier }: Problem): string | null =>
  stage === 'build'
    ? `${numberInWords(multiplicand.text)} × ${numberInWords(multiplier.text)}`
    : null;

const nameOf = (problem: Problem): string => {
  if (problem.walk !== null) return words('someQuestions', { count: problem.prompts.length });
  return problem.multiplier.digits.length === 0
    ? words('freeMat')
    : (inWords(problem) ?? numbersText(problem));
};

/**
 * One of two or three works to begin with: each shows its numbers in tiles. Properties `attempt` (with its choices) and
 * `begin` (opens what the server kept as the choice, with a first sentence; false: that could not be had).
 */
export class PwChoice extends LitElement {
  static override properties = {
    attempt: { attribute: false },
    busy: { state: true },
    told: { state: true },
  };
  static override styles = [
    buttonStyles,
    css`
      :host {
        display: grid;
        align-content: safe center;
        gap: 28px;
        box-sizing: border-box;
        min-height: 100dvh;
        max-width: 1100px;
        margin: 0 auto;
        padding: 24px 16px;
      }
      h1 {
        margin: 0;
        font-size: 1.5rem;
        font-weight: 400;
        text-align: center;
      }
      .works {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 230px), 1fr));
        gap: 20px;
      }
      .works button {
        display: grid;
        place-items: center;
        min-height: 190px;
        padding: 24px 12px;
        border: 2px solid var(--cloth-line);
        border-radius: 16px;
        background: var(--cloth);
        font-size: 1.375rem;
        line-height: 1.3;
      }
      .works button[aria-disabled='true'] {
        opacity: 0.6;
      }
      .numbers {
        /* Places run from right to left in every script. */
        direction: ltr;
        display: grid;
        gap: 12px;
        justify-items: end;
      }
      .number {
        display: flex;
        flex-wrap: wrap;
        gap: 5px;
        align-items: center;
        justify-content: end;
        font-size: 1.625rem;
      }
      .tile {
        display: grid;
        place-items: center;
        width: 42px;
        height: 48px;
        border: 1.5px solid var(--line);
        border-radius: 8px;
        background: var(--tile-below);
        box-shadow: 0 2px 0 var(--line);
      }
      .beside .tile {
        background: var(--tile-beside);
      }
      .told {
        min-height: 1.4em;
        margin: 0;
        text-align: center;
      }
    `,
  ];
  declare attempt: Attempt;
  declare busy: boolean;
  declare told: string;
  begin: (chosen: Attempt, first: Sentence | null) => Promise<boolean> = async () => false;

  constructor() {
    super();
    this.busy = false;
    this.told = '';
  }

  private async choose(index: number): Promise<void> {
    if (this.busy) return;
    this.busy = true;
    this.told = '';
    const reply = await chooseProblem(this.attempt.id, index);
    const begun =
      reply.ok && (await this.begin(reply.value.attempt, this.firstOf(reply.value.attempt, index)));
    if (!begun) this.told = words('messageUnreachable');
    this.busy = false;
  }

  /** Another page of this child may have chosen before. */
  private firstOf({ problems }: Attempt, index: number): Sentence | null {
    const same = JSON.stringify(problems[0]) === JSON.stringify(this.attempt.choices[index]);
    return same ? null : sentence('chosenBefore');
  }

  private tiles(text: string, side: string) {
    return html`<span class="number ${side}">${side === 'beside' ? '×' : nothing}
      ${[...text].map((sign) => (sign === '.' ? pointSign : html`<span class="tile">${sign}</span>`))}</span>`;
  }

  private picture(problem: Problem) {
    const { multiplicand, multiplier, stage } = problem;
    if (stage === 'build' || multiplier.digits.length === 0) return nameOf(problem);
    return html`<span class="numbers" aria-hidden="true">
      ${this.tiles(multiplicand.text, 'below')}${this.tiles(multiplier.text, 'beside')}
    </span>`;
  }

  protected override render() {
    const problems = playable(this.attempt.choices) ?? [];
    return html`<h1>${words('chooseOne')}</h1>
      <div class="works">${problems.map(
        (problem, i) => html`<button
          aria-label=${nameOf(problem)}
          aria-disabled=${this.busy}
          @click=${() => void this.choose(i)}
        >${this.picture(problem)}</button>`,
      )}</div>
      <p class="told" role="status">${this.told}</p>`;
  }
}

customElements.define('pw-choice', PwChoice);
