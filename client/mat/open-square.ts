import { html, LitElement, nothing, svg } from 'lit';
import { placeName, type Square } from '../../engine/child.ts';
import { buttonStyles } from '../ui/buttons.ts';
import { icon } from '../ui/icons.ts';
import { stitches, weaveStyles, woven } from '../ui/weave.ts';
import { placeWord, rowWord, words } from '../words/words.ts';
import { barStyles, drawBars } from './bar.ts';
import { pileWords } from './names.ts';
import { openSquareStyles } from './open-square-styles.ts';
import { BETWEEN, barsOf, layPile, ROW } from './pile-layout.ts';
import { type Pick, pickOf } from './ten.ts';
import '../ui/keypad.ts';

/** The least height of a bar that is pressed, and the most of a pile, in pixels. */
const LEAST = 24;
const HIGHEST = 3_000;

/** Between the two parts of a bar that is cut, in the mould's own units. */
const CUT = 10;

export interface OpenView {
  readonly square: Square;
  readonly place: number;
  /** Counts of kinds 1..10. */
  readonly bars: readonly number[];
  /** The square to the left; null at the mat's edge. */
  readonly left: {
    readonly square: Square;
    readonly place: number;
    readonly bars: readonly number[];
  } | null;
  readonly numbers: boolean;
  readonly again: boolean;
}

/** What the child does with an opened square (detail of the event `deed`). */
export type OpenDeed =
  | { readonly is: 'count'; readonly total: number }
  | { readonly is: 'makeTen'; readonly pick: Pick; readonly exchange: boolean }
  | { readonly is: 'exchange'; readonly tens: number; readonly ones: number }
  | { readonly is: 'carryTens'; readonly tens: number }
  | { readonly is: 'exchangeAt'; readonly to: Square }
  | { readonly is: 'takeAway'; readonly bars: readonly number[] };

/**
 * A square opened: its bars finger-sized, to be picked, joined to ten, cut, counted, exchanged to the left.
 * Property `view`. Events: `deed` (OpenDeed), `go` (Square to open instead), `shut`.
 */
export class PwOpenSquare extends LitElement {
  static override properties = {
    view: { attribute: false },
    picked: { state: true },
    typed: { state: true },
    asksOnes: { state: true },
    room: { state: true },
  };
  static override styles = [buttonStyles, weaveStyles, barStyles, openSquareStyles];
  declare view: OpenView;
  /** Places in the pile, in the order of picking. */
  declare picked: readonly number[];
  declare typed: string;
  declare asksOnes: boolean;
  declare room: { readonly width: number; readonly height: number };
  private hadFocus = false;
  private readonly sizing = new ResizeObserver(() => this.measure());

  constructor() {
    super();
    this.picked = [];
    this.typed = '';
    this.asksOnes = false;
    this.room = { width: 320, height: 240 };
  }

  protected override firstUpdated(): void {
    const pile = this.renderRoot.querySelector('.pile');
    if (pile !== null) this.sizing.observe(pile);
    this.focusFirst();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.sizing.disconnect();
  }

  protected override willUpdate(changed: Map<string, unknown>): void {
    this.hadFocus = this.shadowRoot?.activeElement != null;
    const before = changed.get('view') as OpenView | undefined;
    if (before === undefined) return;
    if (before.bars !== this.view.bars || String(before.square) !== String(this.view.square)) {
      this.picked = [];
      this.typed = '';
      this.asksOnes = false;
    }
  }

  /** What is pressed may vanish by being pressed: then the focus goes back to the heading. */
  protected override updated(changed: Map<string, unknown>): void {
    if (this.hadFocus && this.shadowRoot?.activeElement == null) this.focusFirst();
    const before = changed.get('view') as OpenView | undefined;
    const came =
      before !== undefined &&
      barsOf(this.view.left?.bars ?? []).length > barsOf(before.left?.bars ?? []).length;
    if (came && String(before.square) === String(this.view.square)) this.showArrival();
  }

  /** An exchange is seen to go somewhere: the new beads come into the square to the left from this one. */
  private showArrival(): void {
    if (matchMedia('(prefers-reduced-motion: reduce)').matches) return;
    const frames = [{ transform: 'translateX(90px)' }, { transform: 'none' }];
    this.renderRoot
      .querySelector('.left svg:not(.woven)')
      ?.animate(frames, { duration: 240, easing: 'ease-out' });
  }

  /** The heading takes the focus, so that keys and ears begin at the top. */
  focusFirst(): void {
    this.renderRoot.querySelector<HTMLElement>('h2')?.focus();
  }

  /** Something picked up here was let go at a point of the window; false: not over anything of this square. */
  drop(index: number, x: number, y: number): boolean {
    const over = (selector: string) => {
      const box = this.renderRoot.querySelector(selector)?.getBoundingClientRect();
      return box && x >= box.left && x <= box.right && y >= box.top && y <= box.bottom;
    };
    const picked = this.picked.includes(index) ? this.picked : [...this.picked, index];
    const bars = barsOf(this.view.bars);
    if (over('.left') && bars[index] === 10) {
      const tens = picked.filter((i) => bars[i] === 10).length;
      this.deed({ is: 'exchange', tens, ones: tens });
    } else if (over('.mould') && bars[index] !== 10) this.picked = picked;
    return over('section') === true;
  }

  private measure(): void {
    const pile = this.renderRoot.querySelector('.pile');
    if (pile === null) return;
    const { width, height } = pile.getBoundingClientRect();
    this.room = { width, height };
  }

  private deed(detail: OpenDeed): void {
    this.dispatchEvent(new CustomEvent('deed', { detail, bubbles: true, composed: true }));
  }

  private send(event: 'go' | 'shut', detail?: unknown): void {
    this.dispatchEvent(new CustomEvent(event, { detail, bubbles: true, composed: true }));
  }

  private toggle(index: number): void {
    this.picked = this.picked.includes(index)
      ? this.picked.filter((i) => i !== index)
      : [...this.picked, index];
  }

  private digit(digit: number): void {
    if (!this.asksOnes) {
      this.typed = `${this.typed}${digit}`.slice(-3);
      return;
    }
    this.deed({ is: 'exchange', tens: this.tensPicked(), ones: digit });
    this.asksOnes = false;
  }

  private count(): void {
    if (this.typed !== '') this.deed({ is: 'count', total: Number(this.typed) });
    this.typed = '';
  }

  /** The ten-bars picked, or all of them when none is. */
  private tensPicked(): number {
    const bars = barsOf(this.view.bars);
    const picked = this.picked.filter((i) => bars[i] === 10).length;
    return picked > 0 ? picked : (this.view.bars[9] ?? 0);
  }

  private key(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (/^\d$/.test(event.key)) this.digit(Number(event.key));
    else if (event.key === 'Backspace') this.typed = this.typed.slice(0, -1);
    else if (event.key === 'Escape') this.send('shut');
    else if (event.key === 'Enter' && this.typed !== '') this.count();
    else if (/^Arrow(Left|Right|Up|Down)$/.test(event.key)) this.walkBars(event.key);
    else return;
    event.preventDefault();
    event.stopPropagation();
  }

  private walkBars(key: string): void {
    const bars = [...this.renderRoot.querySelectorAll<HTMLElement>('.pile button')];
    const here = bars.indexOf(this.shadowRoot?.activeElement as HTMLElement);
    const next = here + (key === 'ArrowRight' || key === 'ArrowDown' ? 1 : -1);
    bars[Math.min(Math.max(next, 0), bars.length - 1)]?.focus();
  }

  private pile() {
    const between = this.view.numbers ? BETWEEN.numbered : BETWEEN.plain;
    const lay = (height: number) =>
      layPile(this.view.bars, { ...this.room, height, most: 38, row: ROW.wide, between });
    let { height } = this.room;
    let laid = lay(height);
    // A pile that has no room is scrolled: no bar is lower than what can be hit (WCAG 2.2, 2.5.8).
    while (laid.bead * ROW.wide < LEAST && height < HIGHEST) {
      height += LEAST;
      laid = lay(height);
    }
    const { bead, bars } = laid;
    const high = bead * ROW.wide;
    const buttons = bars.map(({ kind, x, y }, i) => {
      const width = kind * bead + (this.view.numbers ? 20 : 0);
      return html`<button
        class="bar-button"
        data-source="pick:${i}:${kind}"
        aria-pressed=${this.picked.includes(i)}
        aria-label=${words('pick', { kind, at: i + 1, all: bars.length })}
        .style=${`left:${x}px;top:${y - high / 2}px;width:${width + 8}px;height:${high}px`}
        @click=${() => this.toggle(i)}
      >
        <svg width=${width + 4} height=${bead * 1.2} aria-hidden="true">
          ${drawBars([{ kind, x: 2, y: bead * 0.6 }], bead)}
          ${this.view.numbers ? svg`<text x=${kind * bead + 9} y=${bead * 0.6 + 5}>${kind}</text>` : nothing}
        </svg>
      </button>`;
    });
    const look = height > this.room.height ? 'pile tall' : 'pile';
    return html`<div class=${look} role="group" aria-label=${words('bars')}>${buttons}</div>`;
  }

  private mould(pick: Pick) {
    const bead = 14;
    let x = 0;
    const { bars, split } = pick;
    const laid = bars.flatMap((kind, i) => {
      const cut = split !== null && i === bars.length - 1;
      // A bar that is cut is seen in its two parts: what fills the ten, and the rest that stands apart.
      return (cut ? [split.take, kind - split.take] : [kind]).map((part) => {
        const placed = { kind: part, x, y: 12, of: kind };
        x += part * bead + (cut ? CUT : 0);
        return placed;
      });
    });
    return html`<svg class="mould" viewBox="-4 0 276 24" role="img" aria-label=${words('pickedSum', { sum: pick.sum })}>
      ${Array.from({ length: 10 }, (_, i) => svg`<circle cx=${bead / 2 + i * bead} cy="12" r="6" />`)}
      ${drawBars(laid, bead)}
      <rect x="-3" y="1" width="146" height="22" rx="11" />
    </svg>`;
  }

  private makeTenButtons(pick: Pick) {
    const label = pick.split === null ? words('makeTen') : words('makeTenSplit', { ...pick.split });
    const act = (exchange: boolean) => this.deed({ is: 'makeTen', pick, exchange });
    return html`<button class="primary" data-do="makeTen" ?disabled=${!pick.makesTen} @click=${() => act(false)}>${label}</button>
      ${pick.makesTen && this.view.left !== null ? html`<button data-do="makeTenAndExchange" @click=${() => act(true)}>${words('makeTenAndExchange')}</button>` : nothing}`;
  }

  private neighbour() {
    const { left } = this.view;
    if (left === null) return html`<p class="soft">${words('nothingLeft')}</p>`;
    const { hierarchy, family } = placeName(left.place);
    const { bead, bars } = layPile(left.bars, {
      width: 84,
      height: 50,
      most: 9,
      row: ROW.close,
      between: BETWEEN.plain,
    });
    return html`<button
        class="left weave h${hierarchy}"
        data-do="goLeft"
        aria-label=${words('openThis', { place: placeWord(left.place) })}
        @click=${() => this.send('go', left.square)}
      >
        ${woven(hierarchy)}<span class="label">${placeWord(left.place)}${stitches(family)}</span>
        <svg width="84" height="50" aria-hidden="true">${drawBars(bars, bead)}</svg>
      </button>
      <span class="arrow" aria-hidden="true">${icon('left')}</span>`;
  }

  private exchange() {
    const tens = this.tensPicked();
    if (tens === 0) return nothing;
    const elsewhere = html`<button data-do="carryTens" @click=${() => this.deed({ is: 'carryTens', tens })}>${words('toOtherSquare')}</button>`;
    if (this.view.left === null) return elsewhere;
    return html`<button
      class="primary"
      data-do="exchange"
      aria-expanded=${this.asksOnes}
      @click=${() => {
        this.asksOnes = !this.asksOnes;
      }}
    >${words('exchangeTens', { tens })}</button>${elsewhere}`;
  }

  private pad() {
    const ask = this.asksOnes ? words('howManyThere') : words('pileIs');
    return html`<div class="pad ${this.asksOnes ? 'asks' : ''}">
      <div class="typed">
        <span role="status">${ask}</span>
        ${
          this.asksOnes
            ? nothing
            : html`<output class="answer" aria-label=${words('pileIs')}>${this.typed}</output>
        <button class="primary" data-do="count" ?disabled=${this.typed === ''} @click=${this.count}>${words('counted')}</button>`
        }
      </div>
      <pw-keypad
        .name=${ask}
        .rubs=${!this.asksOnes}
        @digit=${(event: CustomEvent<number>) => this.digit(event.detail)}
        @rub=${() => {
          this.typed = this.typed.slice(0, -1);
        }}
      ></pw-keypad>
    </div>`;
  }

  protected override render() {
    const { view } = this;
    const { hierarchy, family } = placeName(view.place);
    const all = barsOf(view.bars);
    const picks = this.picked.map((i) => all[i] ?? 0);
    const pick = pickOf(picks.filter((kind) => kind < 10));
    const empty = all.length === 0;
    return html`<section @keydown=${this.key} aria-label=${words('opened', { place: placeWord(view.place), row: rowWord(view.square[0]) })}>
      <div class="cloth weave h${hierarchy} ${view.again ? 'again' : ''}">
        ${woven(hierarchy)}<h2 tabindex="-1" aria-label=${[placeWord(view.place), pileWords(view.bars)].filter(Boolean).join(', ')}>${placeWord(view.place)}${stitches(family)}</h2>
        ${this.pile()}
        ${empty ? html`<p class="empty">${words('openedEmpty')}</p>` : nothing}
      </div>
      <div class="side">
        <div class="neighbour">${this.neighbour()}${this.exchange()}</div>
        ${
          empty
            ? nothing
            : html`<div class="ten">${this.mould(pick)}<span class="soft" role="status">${pick.sum === 0 ? words('noPick') : pick.bars.join(' + ')}</span><div class="buttons">${this.makeTenButtons(pick)}
          ${picks.length > 0 ? html`<button data-do="takeAway" @click=${() => this.deed({ is: 'takeAway', bars: picks })}>${words('takeAway')}</button>` : nothing}</div></div>
        ${this.pad()}`
        }
        <button class="shut" data-do="shut" @click=${() => this.send('shut')}>${words('backToMat')}</button>
      </div>
    </section>`;
  }
}

customElements.define('pw-open-square', PwOpenSquare);
