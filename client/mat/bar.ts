import { css, html, LitElement, type SVGTemplateResult, svg, unsafeCSS } from 'lit';

/**
 * One bar as a string of round beads, drawn with three dashed strokes however many beads it has:
 * a mat full of bars stays light. `x` is the left end, `y` the thread; `bead` the distance from bead to bead;
 * `of` the bar that this is a part of.
 */
export const drawBar = (
  kind: number,
  x: number,
  y: number,
  bead: number,
  of = kind,
): SVGTemplateResult => {
  const end = x + kind * bead;
  const from = x + bead / 2;
  const line = Math.max(0.8, Math.min(2, bead * 0.09));
  const dots = `0 ${bead}`;
  const beads = `M${from} ${y}H${end - bead / 2 + 0.01}`;
  return svg`<g class="bar">
    <path d="M${x - bead * 0.12} ${y}H${end + bead * 0.12}" class="thread" stroke-width=${line} />
    <path d=${beads} class="rim" stroke-width=${bead * 0.98} stroke-dasharray=${dots} />
    <path d=${beads} class=${`b${of}`} stroke-width=${bead * 0.98 - 2 * line} stroke-dasharray=${dots} />
    ${bead >= 7 ? svg`<path d=${`M${from - bead * 0.14} ${y - bead * 0.16}H${end - bead / 2 - bead * 0.13}`} class="shine" stroke-width=${bead * 0.2} stroke-dasharray=${dots} />` : null}
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
      ${drawBar(this.kind, this.bead * 0.2, height / 2, this.bead)}
    </svg>`;
  }
}

customElements.define('pw-bar', PwBar);
