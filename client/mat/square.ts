import { css, html, LitElement, svg } from 'lit';
import { icon } from '../ui/icons.ts';
import { stitches, weaveStyles, woven } from '../ui/weave.ts';
import { barStyles, drawBars } from './bar.ts';
import { BETWEEN, layPile, ROW } from './pile-layout.ts';
import type { SquareView } from './view.ts';

/**
 * One square of the mat. The host is the grid's cell: its owner sets role, name and tab stop.
 * Properties: `hierarchy`, `family`, `bars` (counts of kinds 1..10), `side` (pixels),
 * `figures` (digits in its corners; null: none),
 * and the states `asked` (what the question is about), `again` (to be looked at again), `target` (may receive), `held` (its pile is in the hand), `marked` (a hint points here).
 */
export class PwSquare extends LitElement {
  static override properties = {
    hierarchy: { type: Number },
    family: { type: Number },
    bars: { attribute: false },
    side: { type: Number },
    again: { type: Boolean, reflect: true },
    target: { type: Boolean, reflect: true },
    held: { type: Boolean, reflect: true },
    marked: { type: Boolean, reflect: true },
    asked: { type: Boolean, reflect: true },
    figures: { attribute: false },
    numbers: { type: Boolean },
  };
  static override styles = [
    weaveStyles,
    barStyles,
    css`
      :host {
        position: relative;
        /* Cloth and pile lie in one cell, unpositioned: a layer for each makes a full mat heavy. */
        display: grid;
        box-sizing: border-box;
        width: var(--square);
        height: var(--square);
        cursor: pointer;
        outline: none;
        -webkit-tap-highlight-color: transparent;
      }
      .cloth,
      .pile {
        grid-area: 1 / 1;
        box-sizing: border-box;
        min-width: 0;
        min-height: 0;
        transition: transform var(--slow);
      }
      .cloth {
        border: 3px solid var(--edge-colour);
        border-radius: 6px;
      }
      :host([decimal]) .cloth {
        border-style: dashed;
      }
      .stitches {
        justify-content: end;
        padding: 3px 4px;
      }
      svg.pile {
        overflow: visible;
        width: 100%;
        height: 100%;
        pointer-events: none;
      }
      text {
        fill: var(--ink);
        font-size: 11px;
        font-weight: 700;
        paint-order: stroke;
        stroke: var(--tint);
        stroke-width: 3px;
      }
      :host([again])::before,
      :host([again])::after,
      :host([again]) .cloth,
      :host([again]) .pile,
      :host([held]) .pile {
        transform: translate(-3px, -6px);
      }
      :host([again]) .cloth {
        outline: 3px solid var(--again);
        outline-offset: 1px;
        box-shadow: 5px 9px 7px rgb(0 0 0 / 45%);
      }
      :host([again]),
      :host([held]),
      :host(:focus-visible) {
        z-index: 2;
      }
      .mark {
        position: absolute;
        top: -15px;
        left: -11px;
        width: 22px;
        height: 22px;
        display: grid;
        place-items: center;
        border: 2px solid var(--again);
        border-radius: 50%;
        background: var(--again-tint);
        color: var(--again);
      }
      .mark svg {
        width: 16px;
        height: 16px;
      }
      :host([target])::after,
      :host([marked])::after {
        content: '';
        position: absolute;
        inset: 6px;
        border: 2.5px dashed var(--ink);
        border-radius: 5px;
      }
      :host([asked])::before {
        content: '';
        position: absolute;
        inset: 5px;
        border: 4px double var(--ink);
        border-radius: 5px;
      }
      .figure {
        position: absolute;
        display: grid;
        place-items: center;
        width: 48%;
        height: 48%;
        box-sizing: border-box;
        color: var(--ink);
        font-size: calc(var(--square) * 0.36);
        line-height: 1;
      }
      .figure::before {
        content: attr(data-digit);
      }
      @media (forced-colors: active) {
        /* A digit is not read off the weave. */
        .figure:not([data-digit='']) {
          width: 1.2em;
          height: 1.1em;
          background: Canvas;
          border-radius: 4px;
        }
      }
      .own {
        right: 5%;
        bottom: 4%;
      }
      .fromRight {
        top: 4%;
        left: 5%;
      }
      .pen {
        border: 2.5px solid var(--focus);
        border-radius: 6px;
        background: var(--surface);
      }
      .between {
        position: absolute;
        inset: 3px;
        background: linear-gradient(
          to bottom right,
          transparent calc(50% - 0.8px),
          var(--edge-colour) calc(50% - 0.8px) calc(50% + 0.8px),
          transparent calc(50% + 0.8px)
        );
      }
      :host([held]) .cloth {
        outline: 3px solid var(--ink);
        outline-offset: 1px;
      }
      :host(:focus-visible) .cloth {
        outline: 3px solid var(--focus);
        outline-offset: 2px;
        box-shadow: 0 0 0 2px var(--gap);
      }
    `,
  ];
  declare hierarchy: number;
  declare family: number;
  declare bars: readonly number[];
  declare side: number;
  declare again: boolean;
  declare target: boolean;
  declare held: boolean;
  declare marked: boolean;
  declare asked: boolean;
  declare figures: SquareView['figures'];
  declare numbers: boolean;

  constructor() {
    super();
    this.hierarchy = 0;
    this.family = 0;
    this.bars = [];
    this.side = 48;
    this.again = false;
    this.target = false;
    this.held = false;
    this.marked = false;
    this.asked = false;
    this.figures = null;
    this.numbers = false;
  }

  private pile() {
    const head = Math.max(11, this.side * 0.2);
    const room = this.numbers ? 12 : 0;
    const width = this.side - 14 - room;
    const height = this.side - head - 6;
    const { bead, bars } = layPile(this.bars, {
      width,
      height,
      most: 11,
      row: ROW.close,
      between: BETWEEN.plain,
    });
    const end = Math.max(0, ...bars.map(({ kind, x }) => x + kind * bead));
    const low = Math.max(0, ...bars.map(({ y }) => y + (bead * ROW.close) / 2));
    const left = 7 + (width - end) / 2;
    const top = head + (height - low) / 2;
    const placed = bars.map(({ kind, x, y }) => ({ kind, x: left + x, y: top + y }));
    return svg`${drawBars(placed, bead)}${
      this.numbers ? this.kinds(bars.map(({ kind }) => kind)) : null
    }`;
  }

  /** Which bars lie here, as numbers down the side. */
  private kinds(bars: readonly number[]) {
    const x = this.side - 7;
    return [...new Set(bars)].map(
      (kind, i) => svg`<text x=${x} y=${24 + i * 12} text-anchor="end">${kind}</text>`,
    );
  }

  private figure(slot: 'own' | 'fromRight') {
    const { figures } = this;
    if (figures === null) return null;
    return html`<span class=${`figure ${slot} ${figures.pen === slot ? 'pen' : ''}`} data-digit=${figures[slot] ?? ''}></span>`;
  }

  protected override render() {
    return html`<div class="cloth h${this.hierarchy} ${this.again ? 'weave' : ''}">${this.again ? woven(this.hierarchy) : null}${stitches(this.family)}</div>
      ${this.figures === null ? null : html`<div class="between h${this.hierarchy}"></div>${this.figure('fromRight')}${this.figure('own')}`}
      <svg class="pile h${this.hierarchy}" aria-hidden="true">${this.pile()}</svg>
      ${this.again ? html`<span class="mark">${icon('look')}</span>` : null}`;
  }
}

customElements.define('pw-square', PwSquare);
