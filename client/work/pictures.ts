import { html, svg, type TemplateResult } from 'lit';

const picture = (content: ReturnType<typeof svg>): TemplateResult => html`<svg
  class="picture"
  viewBox="0 0 150 76"
  width="150"
  height="76"
  aria-hidden="true"
>
  ${content}
</svg>`;

const beads = (x: number, y: number, count: number, step: number) =>
  Array.from(
    { length: count },
    (_, i) => svg`<circle class="bead" cx=${x + i * step} cy=${y} r=${step * 0.42} />`,
  );

/** A small square becomes a big one in which the beads can be counted. */
export const openingPicture = picture(svg`
  <rect class="square" x="4" y="24" width="30" height="30" rx="4" />${beads(12, 36, 3, 7)}${beads(12, 44, 3, 7)}
  <path class="way" d="M42 39h18M54 33l7 6-7 6" />
  <rect class="square" x="70" y="4" width="76" height="68" rx="7" />${beads(86, 28, 3, 20)}${beads(86, 50, 3, 20)}
`);

/** Beads go down along the diagonal, to the left. */
export const slidingPicture = picture(svg`
  <rect class="square" x="76" y="4" width="32" height="32" rx="4" />
  <rect class="square other" x="41" y="4" width="32" height="32" rx="4" />
  <rect class="square other" x="76" y="39" width="32" height="32" rx="4" />
  <rect class="square" x="41" y="39" width="32" height="32" rx="4" />
  ${beads(84, 16, 3, 8)}${beads(49, 58, 3, 8)}
  <path class="way" d="M85 28 66 47M66 39v9h9" />
`);
