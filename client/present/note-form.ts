import { css, html, LitElement } from 'lit';
import type { Problem } from '../../engine/child.ts';
import { buttonStyles } from '../ui/buttons.ts';
import { presentWords } from '../words/class-present-words.ts';
import { fieldStyles } from './field-styles.ts';
import { fileNameOf, noteOf, type PresentationNote } from './note.ts';

/** Today by this device's own calendar. */
const today = (): string => {
  const now = new Date();
  const two = (number: number) => String(number).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

const save = (note: PresentationNote): string => {
  const file = fileNameOf(note);
  const url = URL.createObjectURL(
    new Blob([`${JSON.stringify(note, null, 2)}\n`], { type: 'application/json' }),
  );
  Object.assign(document.createElement('a'), { href: url, download: file }).click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
  return file;
};

/** "Note as presented to …", as a file. Properties `problem`, `activity` (a title or null). Event `close`. */
export class PwNoteForm extends LitElement {
  static override properties = {
    problem: { attribute: false },
    activity: { attribute: false },
    told: { state: true },
  };
  static override styles = [
    buttonStyles,
    fieldStyles,
    css`
      form {
        display: flex;
        flex-wrap: wrap;
        gap: 8px 14px;
        align-items: end;
        padding: 10px 14px;
        border: 1.5px solid var(--rule);
        border-radius: 10px;
        background: var(--surface);
      }
      h2,
      p {
        flex: 1 0 100%;
        margin: 0;
      }
      h2 {
        font-size: 1.125rem;
      }
      p {
        color: var(--soft);
      }
    `,
  ];
  declare problem: Problem;
  declare activity: string | null;
  declare told: string;

  constructor() {
    super();
    this.activity = null;
    this.told = '';
  }

  private readonly submit = (event: SubmitEvent): void => {
    event.preventDefault();
    const fields = new FormData(event.target as HTMLFormElement);
    const note = noteOf({
      to: String(fields.get('to') ?? ''),
      on: String(fields.get('on') ?? ''),
      activity: this.activity,
      problem: this.problem,
    });
    this.told =
      note === null ? presentWords('noteMissing') : presentWords('noteSaved', { file: save(note) });
  };

  protected override render() {
    return html`<form @submit=${this.submit} novalidate>
      <h2>${presentWords('noteTitle')}</h2>
      <label>${presentWords('noteTo')}<input name="to" autocomplete="off" /></label>
      <label>${presentWords('noteOn')}<input name="on" type="date" value=${today()} /></label>
      <button class="primary" data-do="note">${presentWords('noteSave')}</button>
      <button type="button" data-do="close" @click=${() => this.dispatchEvent(new CustomEvent('close'))}>${presentWords('close')}</button>
      <p role="status">${this.told || presentWords('noteIntro')}</p>
    </form>`;
  }
}

customElements.define('pw-note-form', PwNoteForm);
