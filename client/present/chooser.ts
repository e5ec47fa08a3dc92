import { css, html, LitElement, nothing } from 'lit';
import { type Problem, parseProblem, STAGES, type Stage } from '../../engine/child.ts';
import type { Given } from '../problems/address.ts';
import { readTyped, signsOf } from '../problems/typed.ts';
import { buttonStyles } from '../ui/buttons.ts';
import { type PresentWordId, presentWords } from '../words/class-present-words.ts';
import { numberLocale } from '../words/locale.ts';
import { numbersShown } from './captions.ts';
import { fieldStyles } from './field-styles.ts';

const STAGE_WORDS: Readonly<Record<Stage, PresentWordId>> = {
  walk: 'stageWalk',
  build: 'stageBuild',
  bars1: 'stageBars1',
  bars: 'stageBars',
  facts: 'stageFacts',
  record: 'stageRecord',
  cells: 'stageCells',
  paper: 'stagePaper',
  open: 'stageOpen',
};

const nameOf = (problem: Problem): string => {
  const stage = presentWords(STAGE_WORDS[problem.stage]);
  const numbers = numbersShown(problem);
  if (numbers !== '') return presentWords('named', { numbers, stage });
  const count = problem.prompts.length;
  return count === 0 ? stage : presentWords('questions', { stage, count });
};

/** Stages that need no numbers. */
const BARE: readonly Stage[] = ['walk', 'open'];

/** What was typed as a problem of a stage, or the sentence that says why not. */
const readOwn = (stage: Stage, text: string): Problem | PresentWordId => {
  const bare = stage === 'walk' || (BARE.includes(stage) && text.trim() === '');
  const [line, ...more] = readTyped(text, signsOf(numberLocale));
  if (!bare && (line?.pair == null || more.length > 0)) return 'notClear';
  const parsed = parseProblem({ stage, ...(bare ? {} : line?.pair) });
  return parsed.ok ? parsed.value : 'notPlayable';
};

/** Which problem is presented. Property `given`. Event `chosen` (detail: { problem, activity }; a title, or null for one's own). */
export class PwChooser extends LitElement {
  static override properties = { given: { attribute: false }, told: {} };
  static override styles = [
    buttonStyles,
    fieldStyles,
    css`
      :host {
        display: grid;
        gap: 16px;
        max-width: 60rem;
        margin: 0 auto;
        padding: 20px 16px 32px;
      }
      h1,
      h2 {
        margin: 0;
        font-size: 1.5rem;
        font-weight: 400;
      }
      h2 {
        font-size: 1.125rem;
        font-weight: 700;
      }
      p {
        margin: 0;
        color: var(--soft);
      }
      p.told {
        flex: 1 0 100%;
        color: var(--again);
      }
      section,
      form {
        display: flex;
        flex-wrap: wrap;
        gap: 10px 12px;
        align-items: end;
      }
      h2 {
        flex: 1 0 100%;
      }
      section button {
        padding: 10px 16px;
        line-height: 1.3;
        text-align: start;
      }
      input {
        width: min(100%, 16rem);
      }
      select {
        max-width: 100%;
      }
    `,
  ];
  declare given: Given;
  declare told: string;

  constructor() {
    super();
    this.told = '';
  }

  private choose(problem: Problem, activity: string | null): void {
    this.told = '';
    this.dispatchEvent(new CustomEvent('chosen', { detail: { problem, activity } }));
  }

  private readonly submit = (event: SubmitEvent): void => {
    event.preventDefault();
    const fields = new FormData(event.target as HTMLFormElement);
    const stage = STAGES[Number(fields.get('stage'))] ?? 'bars';
    const read = readOwn(stage, String(fields.get('numbers') ?? ''));
    if (typeof read === 'string') this.told = presentWords(read);
    else this.choose(read, null);
  };

  private ofActivity() {
    const { title, problems } = this.given;
    if (problems.length === 0) return nothing;
    return html`<section>
      <h2>${presentWords('ofActivity', { title })}</h2>
      ${problems.map((problem) => html`<button @click=${() => this.choose(problem, title)}>${nameOf(problem)}</button>`)}
    </section>`;
  }

  protected override render() {
    return html`<h1>${presentWords('presentTitle')}</h1>
      <p>${presentWords('presentIntro')}</p>
      ${this.ofActivity()}
      <form @submit=${this.submit} novalidate>
        <h2>${presentWords('ownProblem')}</h2>
        <label>${presentWords('stage')}<select name="stage">
          ${STAGES.map((stage, i) => html`<option value=${i} ?selected=${stage === 'bars'}>${presentWords(STAGE_WORDS[stage])}</option>`)}
        </select></label>
        <label>${presentWords('numbers')}<input name="numbers" dir="ltr" autocomplete="off" placeholder=${presentWords('numbersLike')} /></label>
        <button class="primary" data-do="begin">${presentWords('start')}</button>
        <p class="told" role="status">${this.told}</p>
      </form>`;
  }
}

customElements.define('pw-chooser', PwChooser);
