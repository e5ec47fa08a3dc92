import { html, LitElement, nothing } from 'lit';
import type { Line } from '../../engine/child.ts';
import { buttonStyles } from '../ui/buttons.ts';
import { icon } from '../ui/icons.ts';
import { placeWord, pointSign, rowWord, words } from '../words/words.ts';
import { named } from './names.ts';
import { paperStyles } from './paper-styles.ts';

export interface PaperCell {
  readonly place: number;
  readonly digit: number | null;
  /** The small figure that was carried to this place. */
  readonly carried: number | null;
  readonly again: boolean;
  readonly active: boolean;
  readonly marked: boolean;
  /** The decimal point stands behind this digit. */
  readonly point: boolean;
}

/** A line that is written digit by digit, highest place first; `row` null: the product. */
export interface PaperLine {
  readonly line: Line;
  readonly row: number | null;
  readonly cells: readonly PaperCell[];
}

export interface PaperView {
  /** The two numbers as they are written; empty: none. */
  readonly multiplicand: string;
  readonly multiplier: string;
  /** Partial products as said, by row from below. */
  readonly said: readonly {
    readonly row: number;
    readonly answer: string;
    readonly again: boolean;
  }[];
  /** Partial products as written, in the order in which they were begun. */
  readonly rows: readonly PaperLine[];
  readonly product: PaperLine;
  /** The line that is being written; alone on a small screen while the mat is beside it. */
  readonly now: Line;
}

/** Where on the paper. */
export interface PaperSpot {
  readonly line: Line;
  readonly place: number;
}

/** One character a square; a point has none of its own, it stands behind its digit. */
const charsOf = (written: string): string[] =>
  [...written.matchAll(/\d\.?/g)].map(([text]) => text.replace('.', pointSign));

const nameOf = ({ row }: PaperLine, cell: PaperCell): string => {
  const names = [
    words(row === null ? 'productCell' : 'rowCell', {
      row: row === null ? '' : rowWord(row),
      place: placeWord(cell.place),
      digit: cell.digit ?? words('noDigit'),
    }),
  ];
  if (cell.carried !== null) names.push(words('carriedCell', { digit: cell.carried }));
  if (cell.point) names.push(words('pointAfter'));
  return named(names.join(', '), cell);
};

/** Names the place where the pen is. */
const penOf = (view: PaperView | undefined): string =>
  [...(view?.rows ?? []), ...(view === undefined ? [] : [view.product])]
    .flatMap(({ line, cells }) =>
      cells.filter(({ active }) => active).map(({ place }) => `${line} ${place}`),
    )
    .join();

/** Where Tab comes to a line: what is to be looked at, else the pen, else the units. */
const stopOf = (cells: readonly PaperCell[]): number => {
  const called = cells.findIndex(({ again, marked }) => again || marked);
  return called < 0
    ? cells.findLastIndex(({ active }, i) => active || i === cells.length - 1)
    : called;
};

/**
 * Squared paper: the problem, what was said or written of each row, and the product line.
 * Property `view`; attributes: `writes` makes every place as wide as a finger; for small screens `whole` leaves out nothing,
 * `row` all but the line that is being written.
 * Events: `line-cell` (detail: PaperSpot), `line-key` (detail: { spot, event }).
 */
export class PwPaper extends LitElement {
  static override properties = { view: { attribute: false } };
  static override styles = [buttonStyles, paperStyles];
  declare view: PaperView;

  /** Where the pen goes has to be seen, and the line that is to be written. */
  protected override updated(changed: Map<string, unknown>): void {
    const before = changed.get('view') as PaperView | undefined;
    const show = (what: string) =>
      this.renderRoot.querySelector(what)?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
    if (before?.now !== this.view.now) show('.line:not(.printed, .later) button:last-child');
    if (penOf(before) !== penOf(this.view)) show('[aria-pressed=true]');
  }

  /** Brings the focus to a place of a line. */
  focusSpot({ line, place }: PaperSpot): void {
    this.renderRoot.querySelector<HTMLElement>(`[data-spot="${line} ${place}"]`)?.focus();
  }

  /** The place under a point of the window, for dropping. */
  spotAt(x: number, y: number): PaperSpot | null {
    const under = this.shadowRoot?.elementFromPoint(x, y)?.closest<HTMLElement>('[data-spot]');
    const [line, place] = under?.dataset.spot?.split(' ') ?? [];
    return line === undefined ? null : { line: line as Line, place: Number(place) };
  }

  private get lines(): readonly PaperLine[] {
    return [...this.view.rows, this.view.product];
  }

  private beside({ line, place }: PaperSpot, key: string): PaperSpot | null {
    if (key === 'ArrowLeft') return { line, place: place + 1 };
    if (key === 'ArrowRight') return { line, place: place - 1 };
    const by = { ArrowUp: -1, ArrowDown: 1 }[key];
    if (by === undefined) return null;
    const to = this.lines[this.lines.findIndex((each) => each.line === line) + by];
    return { line: to?.line ?? line, place };
  }

  private key(event: KeyboardEvent, spot: PaperSpot): void {
    const to = this.beside(spot, event.key);
    if (to !== null) {
      event.preventDefault();
      this.focusSpot(to);
    } else this.dispatchEvent(new CustomEvent('line-key', { detail: { spot, event } }));
  }

  private cell(line: PaperLine, cell: PaperCell, tabStop: boolean) {
    const spot = { line: line.line, place: cell.place };
    const { digit, again, marked } = cell;
    return html`<button
      class=${`${digit === null ? '' : 'written'} ${again ? 'again' : ''} ${marked ? 'marked' : ''}`}
      data-spot=${`${spot.line} ${spot.place}`}
      tabindex=${tabStop ? 0 : -1}
      aria-pressed=${cell.active}
      aria-label=${nameOf(line, cell)}
      @click=${() => this.dispatchEvent(new CustomEvent('line-cell', { detail: spot }))}
      @keydown=${(event: KeyboardEvent) => this.key(event, spot)}
    >${cell.carried === null ? nothing : html`<small data-digit=${cell.carried}></small>`}${digit ?? ''}${cell.point ? html`<b class="point">${pointSign}</b>` : nothing}</button>`;
  }

  private line(line: PaperLine) {
    const stop = stopOf(line.cells);
    const name = line.row === null ? words('productLine') : rowWord(line.row);
    return html`<div class=${line.line === this.view.now ? 'line' : 'line later'} role="group" aria-label=${name}>${line.cells.map((cell, i) => this.cell(line, cell, i === stop))}</div>`;
  }

  private printed(cells: number) {
    const { multiplicand, multiplier, said } = this.view;
    if (multiplicand === '') return nothing;
    const digits = (list: readonly string[]) =>
      [...Array<string>(Math.max(0, cells - list.length)).fill(''), ...list].map(
        (digit) => html`<span>${digit}</span>`,
      );
    return html`<div class="line printed">${digits(charsOf(multiplicand))}</div>
      <div class="line printed">${digits(['×', ...charsOf(multiplier)])}</div>
      <div class="rule printed"></div>
      ${said.map(
        ({ answer, again }) =>
          html`<div class="line printed ${again ? 'again' : ''}">${again ? icon('look') : ''}${digits(charsOf(answer))}</div>`,
      )}
      ${said.length > 0 ? html`<div class="rule printed"></div>` : nothing}`;
  }

  protected override render() {
    const { view } = this;
    const cells = Math.max(view.product.cells.length, charsOf(view.multiplicand).length + 1);
    return html`<div class="box"><div class="sheet" .style=${`--cells:${cells}`}>
      ${this.printed(cells)}
      ${view.rows.map((row) => this.line(row))}
      ${view.rows.length > 0 ? html`<div class="rule later"></div>` : nothing}
      ${this.line(view.product)}
    </div></div>`;
  }
}

customElements.define('pw-paper', PwPaper);
