import { css, html, LitElement, nothing, type SVGTemplateResult, svg, unsafeCSS } from 'lit';
import type { PlacedBar } from './pile-layout.ts';

/** A bar where it lies, and the bar that it is a part of if it was cut. */
type DrawnBar = PlacedBar & { readonly of?: number };

/**
 * Bars as strings of round beads: one dashed path for everything that looks the same, because a path for each bar
 * makes a full mat heavy. `y` is the thread; `bead` the distance from bead to bead.
 */
export const drawBars = (
  bars: readonly DrawnBar[],
  bead: number,
): SVGTemplateResult | typeof nothing => {
  if (bars.length === 0) return nothing;
  const line = Math.max(0.8, Math.min(2, bead * 0.09));
  const dots = `0 ${bead}`;
  /** Along each bar, in beads: from its left end, past its right end, above its thread. */
  const along = (from: number, past: number, above = 0, only = bars) =>
    only
      .map(
        ({ kind, x, y }) => `M${x + from * bead} ${y - above * bead}H${x + (kind + past) * bead}`,
      )
      .join('');
  const fill = (only: number) => {
    const alike = bars.filter(({ kind, of = kind }) => of === only);
    return svg`<path d=${along(0.5, -0.499, 0, alike)} class=${`b${only}`} stroke-width=${bead * 0.98 - 2 * line} stroke-dasharray=${dots} />`;
  };
  return svg`<g class="bar">
    <path d=${along(-0.12, 0.12)} class="thread" stroke-width=${line} />
    <path d=${along(0.5, -0.499)} class="rim" stroke-width=${bead * 0.98} stroke-dasharray=${dots} />
    ${[...new Set(bars.map(({ kind, of = kind }) => of))].map(fill)}
    ${bead >= 7 ? svg`<path d=${along(0.36, -0.63, 0.16)} class="shine" stroke-width=${bead * 0.2} stroke-dasharray=${dots} />` : nothing}
  </g>`;
};

const FILLS = Array.from({ length: 10 }, (_, i) => `.b${i + 1}{stroke:var(--bead-${i + 1})}`);

export const barStyles = css`
  ${unsafeCSS(FILLS.join(''))}
  .bar path {
    fill: none;
    stroke-linecap: round;
  }
  .thread,
  .rim {
    stroke: var(--bead-line);
  }
  .shine {
    stroke: #fff;
    opacity: 0.5;
  }
`;

/** A single bar, `kind` beads long (1..10). Decorative: whoever uses it names it. */
export class PwBar extends LitElement {
  static override properties = { kind: { type: Number }, bead: { type: Number } };
  static override styles = [
    barStyles,
    css`
      :host {
        display: inline-block;
        line-height: 0;
      }
    `,
  ];
  declare kind: number;
  declare bead: number;

  constructor() {
    super();
    this.kind = 1;
    this.bead = 12;
  }

  protected override render() {
    const height = this.bead * 1.2;
    const width = (this.kind + 0.4) * this.bead;
    return html`<svg width=${width} height=${height} aria-hidden="true">
      ${drawBars([{ kind: this.kind, x: this.bead * 0.2, y: height / 2 }], this.bead)}
    </svg>`;
  }
}

customElements.define('pw-bar', PwBar);
