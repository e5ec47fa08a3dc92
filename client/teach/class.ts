import { css, html, LitElement, nothing } from 'lit';
import { type ChildRow, type Classroom, readClass, releaseAll } from '../api/classroom.ts';
import { fragmentOf } from '../problems/fragment.ts';
import { buttonStyles } from '../ui/buttons.ts';
import { type ClassWordId, classWords } from '../words/class-words.ts';
import { moment, words } from '../words/words.ts';
import { marksText } from '../work/marks-text.ts';

const STATES: Record<ChildRow['state'], ClassWordId> = {
  notStarted: 'stateNotStarted',
  working: 'stateWorking',
  finished: 'stateFinished',
  released: 'stateReleased',
};
const DELIVERIES: Record<ChildRow['delivery']['state'], ClassWordId> = {
  none: 'deliveryNone',
  waiting: 'deliveryWaiting',
  sending: 'deliverySending',
  sent: 'deliverySent',
  held: 'deliveryHeld',
  stuck: 'deliveryStuck',
};
const AWAY = [
  'timeout',
  'unreachable',
  'broken',
  'busy',
  'unavailable',
  'stopped',
  'tokenUnavailable',
];
const KNOWN = [
  'trial',
  'noLineItem',
  'noScope',
  'notFinished',
  'notReleased',
  'changedOnPlatform',
  'removedOnPlatform',
  'platformHasNewer',
  'lineItemGone',
  'notGradable',
  'forbidden',
  'scopeMissing',
] as const;

const reasonOf = (code: string): string => {
  if (AWAY.includes(code)) return classWords('reason.away');
  const known = KNOWN.find((other) => other === code);
  return known === undefined ? classWords('reason.other', { code }) : classWords(`reason.${known}`);
};

const deliveryOf = ({ delivery }: ChildRow) => {
  const state = classWords(DELIVERIES[delivery.state]);
  const text =
    delivery.reason === undefined
      ? state
      : classWords('reasonWith', { state, reason: reasonOf(delivery.reason) });
  return html`${text}${
    delivery.lastTriedAt === null
      ? nothing
      : html`<br /><small>${classWords('triedAt', { when: moment(delivery.lastTriedAt) })}</small>`
  }`;
};

/**
 * The class at this activity: a row a child, numbered instead of named. Event `trial`: the teacher wants to try the work.
 */
export class PwClass extends LitElement {
  static override properties = {
    classroom: { state: true },
    told: { state: true },
  };
  static override styles = [
    buttonStyles,
    css`
      :host {
        display: block;
        max-width: 1024px;
        margin: 0 auto;
        padding: 20px 16px 32px;
      }
      header {
        display: flex;
        flex-wrap: wrap;
        gap: 10px 16px;
        align-items: start;
        justify-content: space-between;
      }
      h1 {
        margin: 0;
        font-size: 1.5rem;
        font-weight: 400;
      }
      .tools {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
      }
      a {
        display: inline-flex;
        align-items: center;
        min-height: 44px;
        padding: 0 8px;
        color: var(--ink);
      }
      p {
        max-width: 68ch;
        margin: 6px 0;
        color: var(--soft);
      }
      .scroll {
        overflow-x: auto;
        margin-top: 14px;
      }
      table {
        width: 100%;
        border-collapse: collapse;
      }
      th,
      td {
        padding: 10px 12px;
        text-align: left;
        vertical-align: top;
      }
      th {
        font-weight: 700;
      }
      tbody tr:nth-child(odd) {
        background: var(--tray);
      }
      tbody th {
        white-space: nowrap;
        font-weight: 400;
      }
      td {
        white-space: nowrap;
      }
      td:last-child {
        min-width: 16rem;
        white-space: normal;
      }
      small {
        color: var(--soft);
      }
    `,
  ];
  declare classroom: Classroom | null;
  declare told: string;

  constructor() {
    super();
    this.classroom = null;
    this.told = '';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    void this.load();
  }

  private async load(): Promise<void> {
    const reply = await readClass();
    if (reply.ok) this.classroom = reply.value;
    else this.told = words(reply.status === 401 ? 'messageNotOpened' : 'messageUnreachable');
  }

  private async release(): Promise<void> {
    const reply = await releaseAll();
    this.told = reply.ok ? classWords('classReleased', reply.value) : words('messageOther');
    await this.load();
  }

  private row(child: ChildRow, index: number) {
    const { score } = child;
    return html`<tr>
      <th scope="row">${classWords('childLabel', { number: index + 1 })}</th>
      <td>${classWords(STATES[child.state])}</td>
      <td>${classWords('classOf', { done: child.problemsFinished, all: child.problems })}</td>
      <td>${score === null ? '–' : words('resultScore', { awarded: marksText(score.awarded), available: marksText(score.available) })}</td>
      <td>${deliveryOf(child)}</td>
    </tr>`;
  }

  private table({ children }: Classroom) {
    if (children.length === 0) return html`<p>${classWords('classEmpty')}</p>`;
    const heads: ClassWordId[] = [
      'classChild',
      'classState',
      'classProblems',
      'classScore',
      'classDelivery',
    ];
    return html`<div class="scroll" tabindex="0" role="region" aria-label=${classWords('classChild')}><table>
      <thead><tr>${heads.map((head) => html`<th scope="col">${classWords(head)}</th>`)}</tr></thead>
      <tbody>${children.map((child, i) => this.row(child, i))}</tbody>
    </table></div>`;
  }

  /** Pages beside this one: they get the problems in their address, for they have no session of their own. */
  private links(activity: Classroom['activity']) {
    const fragment = fragmentOf(activity);
    return html`<a href=${`/present#${fragment}`} target="_blank">${classWords('classPresent')}</a>
      <a href=${`/print#${fragment}`}>${classWords('classPrint')}</a>`;
  }

  private tools(classroom: Classroom | null) {
    const release = classroom?.activity.release === 'byTeacher';
    return html`<div class="tools">
      ${classroom === null ? nothing : this.links(classroom.activity)}
      ${release ? html`<button class="primary" data-do="release" @click=${this.release}>${classWords('classRelease')}</button>` : nothing}
      <button data-do="reload" @click=${this.load}>${classWords('classReload')}</button>
      <button data-do="trial" @click=${() => this.dispatchEvent(new CustomEvent('trial'))}>${classWords('classTry')}</button>
    </div>`;
  }

  protected override render() {
    const { classroom } = this;
    return html`<header>
        <h1>${classroom?.activity.title ?? words('loading')}</h1>
        ${this.tools(classroom)}
      </header>
      <p role="status">${this.told}</p>
      <p>${classWords('classNames')}</p>
      ${classroom === null ? nothing : this.table(classroom)}
      <p>${classWords('classCaution')}</p>`;
  }
}

customElements.define('pw-class', PwClass);
