import { html, svg, type TemplateResult } from 'lit';

type Drawing = ReturnType<typeof svg>;

/** A picture of a move, 150 × 76: what it looks like when it is done. */
export const picture = (content: Drawing | readonly Drawing[]): TemplateResult => html`<svg
  class="picture"
  viewBox="0 0 150 76"
  width="150"
  height="76"
  aria-hidden="true"
>
  ${content}
</svg>`;

export const beads = (x: number, y: number, count: number, step: number): Drawing[] =>
  Array.from(
    { length: count },
    (_, i) => svg`<circle class="bead" cx=${x + i * step} cy=${y} r=${step * 0.42} />`,
  );

/** A square with its upper left corner at (x, y). */
export const box = (x: number, y: number, side = 32, look = ''): Drawing =>
  svg`<rect class=${`square ${look}`} x=${x} y=${y} width=${side} height=${side} rx="4" />`;

/** A small sheet of squared paper with digits on it; a dot is an empty place. */
export const line = (x: number, y: number, digits: string, side = 20): Drawing[] =>
  [...digits].map(
    (digit, i) => svg`<rect class="cell" x=${x + i * side} y=${y} width=${side} height=${side} />
      <text x=${x + (i + 0.5) * side} y=${y + side * 0.75}>${digit === '.' ? '' : digit}</text>`,
  );

/** The way that something takes. */
export const way = (path: string): Drawing => svg`<path class="way" d=${path} />`;
