import { css, html, LitElement, svg } from 'lit';
import { words } from '../words/words.ts';

/** How far a problem is: its form tells, colour only adds. */
export type BeadState = 'done' | 'now' | 'ahead';

const GAP = 18;

const bead = (state: BeadState, i: number) =>
  svg`<circle class=${state} cx=${10 + i * GAP} cy="10" r="7" />${
    state === 'done'
      ? svg`<path class="tick" d=${`M${6.5 + i * GAP} 10l2.500 2.800 4.500-5`} />`
      : null
  }`;

/** A string of beads, one a problem. Property `beads`. */
export class PwProgress extends LitElement {
  static override properties = { beads: { attribute: false } };
  static override styles = css`
    :host {
      display: block;
      line-height: 0;
    }
    line,
    circle {
      stroke: var(--ink);
      stroke-width: 1.6;
    }
    .done {
      fill: var(--ink);
    }
    .now {
      fill: var(--gold);
      stroke-width: 3;
    }
    .ahead {
      fill: var(--surface);
    }
    .tick {
      fill: none;
      stroke: var(--page);
      stroke-width: 2;
      stroke-linecap: round;
    }
  `;
  declare beads: readonly BeadState[];

  constructor() {
    super();
    this.beads = [];
  }

  protected override render() {
    const now = this.beads.indexOf('now') + 1 || this.beads.length;
    const width = this.beads.length * GAP + 4;
    return html`<svg
      width=${width}
      height="20"
      role="img"
      aria-label=${words('progress', { now, all: this.beads.length })}
    >
      <line x1="0" y1="10" x2=${width} y2="10" />
      ${this.beads.map(bead)}
    </svg>`;
  }
}

customElements.define('pw-progress', PwProgress);
