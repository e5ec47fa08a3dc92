import { css, html, svg, type TemplateResult } from 'lit';
import type { Status } from '../../engine/child.ts';

const MARKS: Partial<Record<Status, ReturnType<typeof svg>>> = {
  corrected: svg`<circle class="gold" cx="9" cy="9" r="3" />`,
  follows: svg`<path class="gold" d="M9 2a7 7 0 0 1 0 14z" />`,
  hinted: svg`<path class="line" d="M5.500 9h7M9 5.500v7" />`,
};

/** A step as a bead: full = right at once, ring = put right, half = right after a slip, cross = with help, empty = to look at again. */
export const stepBead = (status: Status): TemplateResult => html`<svg
  class="step ${status}"
  width="18"
  height="18"
  aria-hidden="true"
>
  <circle class="rim" cx="9" cy="9" r="7" />${MARKS[status]}
</svg>`;

export const stepBeadStyles = css`
  .step {
    flex: none;
  }
  .rim {
    fill: var(--surface);
    stroke: var(--ink);
    stroke-width: 1.700;
  }
  .first .rim,
  .gold {
    fill: var(--gold);
  }
  .line {
    stroke: var(--ink);
    stroke-width: 1.700;
  }
  .notRight .rim,
  .open .rim {
    stroke-dasharray: 3 2.500;
  }
  .notRight .rim {
    fill: var(--again-tint);
    stroke: var(--again);
    stroke-width: 2.400;
  }
`;
