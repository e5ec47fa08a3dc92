import { html, nothing, type TemplateResult } from 'lit';
import type { Problem } from '../../engine/child.ts';
import { type IconName, icon } from '../ui/icons.ts';
import type { BeadState } from '../ui/progress.ts';
import { numbersText, type WordId, words } from '../words/words.ts';
import type { DeskController } from './desk.ts';
import { speak, speaks } from './read-aloud.ts';
import { answers } from './told.ts';
import type { Keeping } from './work-store.ts';
import '../ui/progress.ts';

const beadsOf = (at: DeskController): BeadState[] =>
  at.store.works.map((work, i) =>
    i === at.desk.problem ? 'now' : work.finished.problem ? 'done' : 'ahead',
  );

/** What is true of saving at this moment; nothing is called saved before the server has said so. */
export const savingOf = (store: Keeping): { text: string; calm: boolean } => {
  const count = store.unsentCount;
  if (store.alone) return { text: words('forYourself'), calm: true };
  if (store.sendState === 'ended') return { text: words('ended'), calm: false };
  if (store.sendState === 'refused') return { text: words('notTaken', { count }), calm: false };
  if (count === 0) return { text: words('saved'), calm: true };
  if (!store.keeps) return { text: words('notKept'), calm: false };
  if (store.sendState === 'waiting') return { text: words('unsent', { count }), calm: false };
  return { text: words('saving'), calm: true };
};

const tool = (id: WordId, name: IconName, act: () => void, more: { pressed?: boolean } = {}) =>
  html`<button
    class="icon"
    data-do=${id}
    aria-label=${words(id)}
    title=${words(id)}
    aria-pressed=${more.pressed ?? nothing}
    @click=${act}
  >${icon(name)}</button>`;

const saving = (store: Keeping) => {
  const { text, calm } = savingOf(store);
  return html`<span class=${calm ? 'saving' : 'saving loud'} data-saving=${store.unsentCount === 0 ? 'saved' : 'unsent'}>
    ${icon(store.unsentCount === 0 ? 'kept' : 'waiting')}${calm ? text : nothing}<span role="status">${calm ? nothing : text}</span></span>`;
};

const hasBars = ({ tools }: DeskController): boolean => tools.some(({ id }) => id === 'count');

/** Where the numbers are told in words, or there are none, they are not shown in figures. */
const tellsNumbers = ({ stage, multiplier }: Problem): boolean =>
  stage !== 'build' && multiplier.digits.length > 0;

/** The sentence, where one is, and the tools that are the same at every step. */
export const headerOf = (
  at: DeskController,
  help: () => void,
  leave: (() => void) | null,
  watch: (() => void) | null,
): TemplateResult => {
  const { id, values } = at.sentence;
  const text = words(id, values);
  const { problem } = at.work;
  const picture = at.desk.message === null ? at.desk.hint?.picture : null;
  return html`<header>
    <div class="said">
      ${picture ?? nothing}
      <h1 tabindex="-1" class=${at.work.lifted.length > 0 ? 'again' : ''}>${text}</h1>
      <p class="under"><pw-progress .beads=${beadsOf(at)}></pw-progress>${tellsNumbers(problem) ? html`<b dir="ltr">${numbersText(problem)}</b>` : nothing}${saving(at.store)}
        ${at.store.attempt.trial ? html`<span>${words('trial')}</span>` : nothing}
        ${at.store.asideCount > 0 ? html`<span>${words('aside', { count: at.store.asideCount })}</span>` : nothing}</p>
    </div>
    <div class="tools">
      <div class="buttons" role="toolbar" aria-label=${words('tools')}>
        ${tool('undo', 'undo', () => at.do({ do: 'undo' }))}
        ${speaks() ? tool('readAloud', 'speak', () => speak(text)) : nothing}
        ${tool('hint', 'lamp', () => void at.help())}
        ${watch === null ? nothing : tool('seeWorked', 'watch', watch)}
        ${hasBars(at) ? tool('numbersOnBars', 'digits', () => at.set({ numbers: !at.desk.numbers }), { pressed: at.desk.numbers }) : nothing}
        ${tool('keys', 'help', help)}
        ${leave === null ? nothing : html`<button data-do="leave" @click=${leave}>${words(at.store.alone ? 'toResult' : 'backToClass')}</button>`}
        ${answers(at.work) ? html`<button class="check" data-do="check" @click=${() => at.do({ do: 'check' })}>${icon('look')}${words('check')}</button>` : nothing}
      </div>
    </div>
  </header>`;
};
