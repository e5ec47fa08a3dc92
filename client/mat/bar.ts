import { css, html, LitElement, type SVGTemplateResult, svg } from 'lit';

/**
 * One bar as a string of round beads, drawn with three dashed strokes however many beads it has:
 * a mat full of bars stays light. `x` is the left end, `y` the thread; `bead` the distance from bead to bead.
 */
export const drawBar = (
  kind: number,
  x: number,
  y: number,
  bead: number,
  last = false,
): SVGTemplateResult => {
  const end = x + kind * bead;
  const from = x + bead / 2;
  const line = Math.max(0.8, Math.min(2, bead * 0.09));
  const dots = `0 ${bead}`;
  const beads = `M${from} ${y}H${end - bead / 2 + 0.01}`;
  return svg`<g class=${last ? 'bar last' : 'bar'}>
    <path d="M${x - bead * 0.12} ${y}H${end + bead * 0.12}" class="thread" stroke-width=${line} />
    <path d=${beads} class="rim" stroke-width=${bead * 0.98} stroke-dasharray=${dots} />
    <path d=${beads} class="fill" style=${`stroke:var(--bead-${kind})`} stroke-width=${bead * 0.98 - 2 * line} stroke-dasharray=${dots} />
    ${bead >= 7 ? svg`<path d=${`M${from - bead * 0.14} ${y - bead * 0.16}H${end - bead / 2 - bead * 0.13}`} class="shine" stroke-width=${bead * 0.2} stroke-dasharray=${dots} />` : null}
  </g>`;
};

export const barStyles = css`
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
