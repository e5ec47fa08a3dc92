import { css, html, LitElement, noChange, nothing, type TemplateResult } from 'lit';
import { placeName, type Square } from '../../engine/child.ts';
import { weaveStyles } from '../ui/weave.ts';
import { pointSign } from '../words/words.ts';
import { barStyles, drawBars } from './bar.ts';
import { type Cell, cellKey, cellOf, squareCell, step, tileCell } from './cells.ts';
import { clothFrom, drawCloth } from './cloth.ts';
import { EDGE, fitMat, GAP, nearest, type Spot, sameSquare } from './geometry.ts';
import { squareName, tileName } from './names.ts';
import type { MatView } from './view.ts';
import './square.ts';
import './tile.ts';

/** 1, 10, 100 and 0.1, 0.01, 0.001; the family is shown by stitches. */
const edgeLabel = (place: number, hierarchy: number): string => {
  if (place >= 0) return ['1', '10', '100'][hierarchy] ?? '';
  return `0${pointSign}${['001', '1', '01'][hierarchy]}`;
};

/**
 * The mat as a grid that is walked by arrow keys (one tab stop).
 * Property `view`: everything shown; the mat itself knows no arithmetic.
 * Events: `cell` (detail: Cell; pressed), `cell-key` (detail: { cell, event }; a key that is not walking).
 */
export class PwMat extends LitElement {
  static override properties = {
    view: { attribute: false },
    here: { state: true },
    side: { state: true },
    flying: { state: true },
    pans: { type: Boolean, reflect: true },
  };
  static override styles = [
    barStyles,
    weaveStyles,
    css`
      :host {
        /* Places run from right to left in every script. */
        direction: ltr;
        display: grid;
        place-items: start center;
        min-width: 0;
        min-height: 0;
        /* A layer of its own: what changes beside the mat is no reason to paint the mat, nor the other way round. */
        will-change: transform;
      }
      .frame {
        box-sizing: border-box;
        max-width: 100%;
        max-height: 100%;
        overflow: auto;
        overscroll-behavior: contain;
        scrollbar-width: thin;
        scrollbar-color: var(--line) transparent;
        padding: 4px 0 0;
        /* What comes into view does not come under the tiles, which stay where they are. */
        scroll-padding: 16px calc(var(--edge-right) + 8px) calc(var(--edge-bottom) + 4px) 16px;
      }
      :host(:not([pans])) .frame {
        overflow: visible;
      }
      .grid {
        position: relative;
        display: grid;
        width: max-content;
        padding: 10px 0 0 22px;
      }
      .cloth {
        position: absolute;
        top: 0;
        bottom: var(--edge-bottom);
        left: 9px;
        right: calc(var(--edge-right) + 9px);
        border: 1.5px solid var(--cloth-line);
        border-radius: 10px;
        background: var(--cloth);
      }
      .cloth::before,
      .cloth::after {
        content: '';
        position: absolute;
        top: 8px;
        bottom: 8px;
        left: -9px;
        width: 8px;
        background: repeating-linear-gradient(var(--cloth-line) 0 1.6px, transparent 1.6px 7px);
      }
      .cloth::after {
        right: -9px;
        left: auto;
      }
      .woven {
        z-index: auto;
        inset: 10px 0 0 22px;
        width: calc(100% - 22px);
        height: calc(100% - 10px);
      }
      .row {
        display: flex;
        gap: var(--gap-width);
        padding-bottom: var(--gap-width);
      }
      .row.last {
        padding-bottom: 9px;
      }
      .row.below {
        position: sticky;
        z-index: 4;
        bottom: 0;
        margin-left: -22px;
        padding: 0 0 0 22px;
      }
      .beside {
        position: sticky;
        z-index: 3;
        right: 0;
        display: grid;
        justify-items: end;
        width: calc(var(--edge-right) + 22px);
      }
      .beside pw-tile {
        width: var(--edge-right);
      }
      .corner {
        position: sticky;
        right: 0;
        width: calc(var(--edge-right) + 22px);
      }
      :host([pans]) .beside {
        width: calc(var(--edge-right) + 4px);
        margin-left: 18px;
        box-shadow: 0 var(--gap-width) 0 var(--page);
      }
      :host([pans]) .row:nth-child(2) .beside {
        margin-top: -10px;
        padding-top: 10px;
      }
      :host([pans]) .beside,
      :host([pans]) .corner,
      :host([pans]) .row.below {
        background: var(--page);
      }
      pw-tile[edge='right'] {
        height: var(--square);
      }
      pw-tile[edge='bottom'] {
        width: var(--square);
        height: var(--edge-bottom);
      }
      .flight {
        position: absolute;
        z-index: 9;
        inset: 0;
        width: 100%;
        height: 100%;
        overflow: visible;
        pointer-events: none;
      }
      :host([grabs]) pw-square {
        touch-action: none;
      }
    `,
  ];
  declare view: MatView;
  declare here: Cell;
  declare side: number;
  declare flying: readonly number[];
  declare pans: boolean;
  /** Whether there is something new to look for. */
  private called = false;
  /** What each part was last drawn from. */
  private readonly drawn = new Map<string, readonly unknown[]>();
  private readonly sizing = new ResizeObserver(() => this.fit());

  constructor() {
    super();
    this.here = squareCell([0, 0]);
    this.side = 44;
    this.pans = false;
    this.flying = [];
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.sizing.observe(this);
  }

  /** What a child is to look for becomes the tab stop, unless the child is on the mat already. */
  protected override willUpdate(changed: Map<string, unknown>): void {
    const { call: before, shape } = (changed.get('view') as MatView | undefined) ?? {};
    const { call } = this.view;
    // On a mat of another shape other cells stand in the same spots.
    if (changed.has('view') && shape !== this.view.shape) this.drawn.clear();
    this.called = changed.has('view') && !(call && before && cellKey(call) === cellKey(before));
    if (this.called && call !== null && this.shadowRoot?.activeElement == null) this.here = call;
  }

  /** It has to be seen, too. */
  protected override updated(): void {
    const { call } = this.view;
    if (this.called && call !== null)
      this.cellElement(call)?.scrollIntoView({ block: 'nearest', inline: 'center' });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.sizing.disconnect();
  }

  private fit(): void {
    const { width, height } = this.getBoundingClientRect();
    const { rows, columns } = this.view.shape;
    const box = fitMat({ width, height, rows, columns, needed: this.view.needed });
    this.side = box.square;
    this.pans = box.pans;
    if (box.pans) void this.updateComplete.then(() => this.toLowest());
  }

  /** The lowest places first; then whatever was being worked on. */
  private toLowest(): void {
    const frame = this.renderRoot.querySelector('.frame');
    if (frame !== null) frame.scrollLeft = frame.scrollWidth;
    const { call, last } = this.view;
    const here = this.shadowRoot?.activeElement != null || last === null;
    const worked = here ? this.here : squareCell(last);
    // What is to be looked for stands clear of the edges, so that it can rest lifted.
    const how: ScrollIntoViewOptions =
      call === null
        ? { block: 'center', inline: 'nearest' }
        : { block: 'nearest', inline: 'center' };
    this.cellElement(call ?? worked)?.scrollIntoView(how);
  }

  private cellElement(cell: Cell): HTMLElement | null {
    return this.renderRoot.querySelector(`[data-cell="${cellKey(cell)}"]`);
  }

  /** Moves the one tab stop, and the focus with it unless the pointer did it. */
  async walkTo(cell: Cell, focus = true): Promise<void> {
    this.here = cell;
    await this.updateComplete;
    const element = this.cellElement(cell);
    if (focus) element?.focus({ preventScroll: true });
    element?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }

  /** The cell under or near a point of the window, for dropping. */
  cellAt(x: number, y: number): Cell | null {
    const spots: Spot<Cell>[] = [];
    for (const element of this.renderRoot.querySelectorAll<HTMLElement>('[data-cell]')) {
      const { left, top, width, height } = element.getBoundingClientRect();
      spots.push({
        target: cellOf(element.dataset.cell ?? ''),
        left,
        top,
        width,
        height,
      });
    }
    return nearest(spots, x, y, this.side / 2);
  }

  /** Whether a point of the window lies in the upper left half of a cell. */
  inUpperHalf(cell: Cell, x: number, y: number): boolean {
    const box = this.cellElement(cell)?.getBoundingClientRect();
    return box !== undefined && (x - box.left) / box.width + (y - box.top) / box.height < 1;
  }

  /** Shows bars travelling from square to square along the way that the material takes. */
  async fly(from: Square, to: Square, kinds: readonly number[]): Promise<void> {
    if (matchMedia('(prefers-reduced-motion: reduce)').matches) return;
    const flight = this.renderRoot.querySelector<SVGElement>('.flight');
    const [start, end] = [from, to].map((square) => this.cellElement(squareCell(square)));
    if (flight === null || !start || !end) return;
    const base = flight.getBoundingClientRect();
    const at = (element: HTMLElement) => {
      const box = element.getBoundingClientRect();
      return `translate(${box.left - base.left + 6}px, ${box.top - base.top + box.height / 3}px)`;
    };
    this.flying = kinds;
    await this.updateComplete;
    const frames = [{ transform: at(start) }, { transform: at(end) }];
    const motion = flight.firstElementChild?.animate(frames, {
      duration: 240,
      easing: 'ease-in-out',
    });
    await motion?.finished;
    this.flying = [];
  }

  private send(event: string, detail: unknown): void {
    this.dispatchEvent(new CustomEvent(event, { detail, bubbles: true, composed: true }));
  }

  private pressed(cell: Cell): void {
    this.here = cell;
    this.send('cell', cell);
  }

  /** Ears may put the focus on any cell without walking there. */
  private focused(event: FocusEvent): void {
    const key = event.target instanceof HTMLElement ? event.target.dataset.cell : undefined;
    if (key !== undefined) this.here = cellOf(key);
  }

  private key(event: KeyboardEvent): void {
    const to = step(this.here, event, this.view.shape);
    if (to === null) this.send('cell-key', { cell: this.here, event });
    else {
      event.preventDefault();
      void this.walkTo(to);
    }
  }

  /** Of the tiles below and beside: a square's place is their sum. */
  private placesOf(row: number, column: number) {
    const { bottom, right } = this.view.tiles;
    return { row: right[row]?.place ?? row, column: bottom[column]?.place ?? column };
  }

  /** A press changes a part or two: those that would look the same are passed over. `from`: all that a part's look depends on. */
  private drawAnew<T>(part: string, from: readonly unknown[], draw: () => T) {
    if (this.drawn.get(part)?.every((each, i) => each === from[i])) return noChange;
    this.drawn.set(part, from);
    return draw();
  }

  private cell(
    cell: Cell,
    from: readonly unknown[],
    draw: (key: string, tabStop: number) => TemplateResult,
  ) {
    const key = cellKey(cell);
    const tabStop = cellKey(this.here) === key ? 0 : -1;
    return this.drawAnew(key, [tabStop, ...from], () => draw(key, tabStop));
  }

  private woven() {
    const { view, side } = this;
    return this.drawAnew('cloth', clothFrom(view, side), () => drawCloth(view, side));
  }

  private square(row: number, column: number) {
    const { view, side } = this;
    const cell = squareCell([row, column]);
    const state = view.squares[row]?.[column];
    if (state === undefined) return nothing;
    const places = this.placesOf(row, column);
    const asked = sameSquare(view.asked, [row, column]);
    const { tellsPlaces, numbers } = view;
    const from = [
      ...Object.values(state),
      ...Object.values(places),
      asked,
      tellsPlaces,
      numbers,
      side,
    ];
    return this.cell(cell, from, (key, tabStop) => {
      const place = view.shape.origin + row + column;
      const { hierarchy, family } = placeName(place);
      return html`<pw-square
        role="gridcell"
        data-cell=${key}
        data-source=${state.bars.some((count) => count > 0) ? `pile:${row}:${column}` : 'none'}
        tabindex=${tabStop}
        aria-label=${squareName(places, state, { tellsPlace: tellsPlaces, asked })}
        aria-selected=${state.held || nothing}
        ?decimal=${place < 0}
        .hierarchy=${hierarchy}
        .family=${family}
        .bars=${state.bars}
        .side=${side}
        .again=${state.again}
        .target=${state.target}
        .held=${state.held}
        .marked=${state.marked}
        .asked=${asked}
        .figures=${state.figures}
        .numbers=${numbers}
        @click=${() => this.pressed(cell)}
      ></pw-square>`;
    });
  }

  private tile(edge: 'bottom' | 'right', index: number) {
    const cell = tileCell(edge, index);
    const state = this.view.tiles[edge][index];
    if (state === undefined) return nothing;
    return this.cell(cell, Object.values(state), (key, tabStop) => {
      const { hierarchy, family } = placeName(state.place);
      return html`<pw-tile
        role="gridcell"
        data-cell=${key}
        tabindex=${tabStop}
        aria-label=${tileName(edge, state)}
        .edge=${edge}
        .digit=${state.digit}
        .label=${edgeLabel(state.place, hierarchy)}
        .hierarchy=${hierarchy}
        .family=${state.place < 0 && hierarchy === 0 ? family + 1 : family}
        .again=${state.again}
        .active=${state.active}
        .marked=${state.marked}
        @click=${() => this.pressed(cell)}
      ></pw-tile>`;
    });
  }

  protected override render() {
    const { rows, columns } = this.view.shape;
    const across = Array.from({ length: columns }, (_, i) => columns - 1 - i);
    const upDown = Array.from({ length: rows }, (_, i) => rows - 1 - i);
    const lengths = `--square:${this.side}px;--gap-width:${GAP}px;--edge-right:${EDGE.right}px;--edge-bottom:${EDGE.bottom}px`;
    return html`<div class="frame" .style=${lengths}>
      <div class="grid" role="grid" aria-label=${this.view.name} @keydown=${this.key} @focusin=${this.focused}>
        <div class="cloth" role="presentation"></div>
        <svg class="woven" aria-hidden="true">${this.woven()}</svg>
        ${upDown.map(
          (row) => html`<div class=${row === 0 ? 'row last' : 'row'} role="row">
            ${across.map((column) => this.square(row, column))}
            <div class="beside" role="presentation">${this.tile('right', row)}</div>
          </div>`,
        )}
        <div class="row below" role="row">${across.map((column) => this.tile('bottom', column))}</div>
        <svg class="flight" aria-hidden="true"><g>${drawBars(
          this.flying.map((kind, i) => ({ kind, x: 0, y: i * 9 })),
          8,
        )}</g></svg>
      </div>
    </div>`;
  }
}

customElements.define('pw-mat', PwMat);
