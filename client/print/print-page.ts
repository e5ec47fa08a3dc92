import { html, LitElement, nothing, svg } from 'lit';
import { type Given, NOTHING_GIVEN } from '../problems/address.ts';
import { BEADS } from '../ui/beads.ts';
import { buttonStyles } from '../ui/buttons.ts';
import { printWords } from '../words/class-print-words.ts';
import { browserLanguages, locale } from '../words/locale.ts';
import type { Choice } from './choice.ts';
import { formOf } from './form.ts';
import { PAPERS, type PaperName, sizeOf, usualPaper } from './paper.ts';
import { printStyles } from './print-styles.ts';
import { problemForm, readProblems, type Source } from './problem-form.ts';
import { drawSheet, type Sheet } from './sheet.ts';
import { sheetsOf } from './sheets.ts';

const FIRST: Omit<Choice, 'paper'> = {
  kinds: ['mat'],
  inks: 'colour',
  rows: 4,
  columns: 9,
  decimals: 0,
  side: 'whole',
  tileSets: 2,
  barSets: 9,
  beads: BEADS[0],
  numbers: false,
  ruling: 7,
  problems: [],
};

/** A page's size and margins can only be told by the document itself. */
const pageRules = (paper: PaperName): string => {
  const { width, height } = PAPERS[paper];
  return `@page { size: ${width}mm ${height}mm; margin: 0 }
    @media print { html, body, #page { height: auto; min-height: 0; background: #fff } }`;
};

/**
 * Sheets at true size: a form, and under it what will be printed. Property `given`: the activity's problems, if any.
 * Needs no session: nothing on a sheet is about a child.
 */
export class PwPrint extends LitElement {
  static override properties = {
    given: { attribute: false },
    choice: { state: true },
    source: { state: true },
    typed: { state: true },
    blocked: { state: true },
  };
  static override styles = [buttonStyles, printStyles];
  declare given: Given;
  declare choice: Choice;
  declare source: Source;
  declare typed: string;
  declare blocked: boolean;
  private readonly rules = new CSSStyleSheet();

  constructor() {
    super();
    this.given = NOTHING_GIVEN;
    this.choice = { ...FIRST, paper: usualPaper([locale, ...browserLanguages]) };
    this.source = 'typed';
    this.typed = '';
    this.blocked = false;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.given.problems.length > 0) this.source = 'activity';
    this.choice = { ...this.choice, beads: this.given.beads };
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, this.rules];
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== this.rules);
  }

  private get problems(): Choice['problems'] {
    return this.source === 'activity' ? this.given.problems : readProblems(this.typed).problems;
  }

  /** A frame may forbid printing, and then says nothing: that no printing began is the only sign. */
  private print(): void {
    let began = false;
    const note = () => {
      began = true;
    };
    addEventListener('beforeprint', note, { once: true });
    window.print();
    removeEventListener('beforeprint', note);
    this.blocked = !began;
  }

  private actions(count: number) {
    const framed = window.self !== window.top;
    return html`<div class="act">
      <button class="primary" data-do="print" ?disabled=${count === 0} @click=${this.print}>${printWords('printNow')}</button>
      <span role="status">${this.blocked ? printWords('printBlocked') : printWords('sheetCount', { count })}</span>
      ${framed ? html`<a href=${location.href} target="_blank">${printWords('inTab')}</a>` : nothing}
      ${history.length > 1 ? html`<button data-do="back" @click=${() => history.back()}>${printWords('back')}</button>` : nothing}
    </div>`;
  }

  private sheet(sheet: Sheet, index: number, all: number) {
    const { paper } = this.choice;
    const { width, height } = sizeOf(paper, sheet.landscape);
    const at = printWords('sheetOf', { at: index + 1, all });
    return html`<div class=${sheet.landscape ? 'sheet landscape' : 'sheet'}>${svg`<svg
      viewBox=${`0 0 ${width} ${height}`}
      role=${sheet.text ? 'group' : 'img'}
      aria-label=${`${at}. ${sheet.title}. ${sheet.part}`}
    >${drawSheet(sheet, paper, at)}</svg>`}</div>`;
  }

  protected override willUpdate(): void {
    this.rules.replaceSync(pageRules(this.choice.paper));
  }

  protected override render() {
    const sheets = sheetsOf({ ...this.choice, problems: this.problems });
    const { width, height } = PAPERS[this.choice.paper];
    const choose = (change: Partial<Choice>) => {
      this.choice = { ...this.choice, ...change };
    };
    const problems = problemForm(
      this,
      (source) => {
        this.source = source;
      },
      (typed) => {
        this.typed = typed;
      },
    );
    return html`<div class="form">
        <h1>${printWords('printTitle')}</h1>
        <p>${printWords('printIntro')}</p>
        ${formOf(this.choice, choose, problems)}${this.actions(sheets.length)}
      </div>
      <div class="sheets" .style=${`--paper-width:${width}mm;--paper-height:${height}mm`}>
        <h2>${printWords('preview')}</h2>
        ${sheets.map((sheet, i) => this.sheet(sheet, i, sheets.length))}
      </div>`;
  }
}

customElements.define('pw-print', PwPrint);
