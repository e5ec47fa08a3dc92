import { css, html, type SVGTemplateResult, svg, type TemplateResult } from 'lit';

/**
 * The cloth: plain weave for units, twill for tens, basket weave for hundreds, so that colour is never the only sign.
 * Each as threads in a tile: its side, the middle of each thread, how thick they are.
 */
const WEAVES = [
  { tile: 8, threads: 'M0 2h4M4 6h4M6 0v4M2 4v4', thick: 1.6 },
  { tile: 8, threads: 'M-2 3.28 3.28-2M-2 11.28 11.28-2M6 11.28 11.28 6', thick: 1.81 },
  {
    tile: 14,
    threads: 'M0 1.8h7M0 5.4h7M7 8.8h7M7 12.4h7M8.8 0v7M12.4 0v7M1.8 7v7M5.4 7v7',
    thick: 1.6,
  },
] as const;

/** All that a path encloses, woven in one go: woven of gradients, a full mat took most of the time that a press takes to be seen. */
export const weave = (hierarchy: number, enclosed: string): SVGTemplateResult => {
  const { tile, threads, thick } = WEAVES[hierarchy]!;
  const id = `weave${hierarchy}`;
  return svg`<g class="h${hierarchy}">
    <pattern id=${id} width=${tile} height=${tile} patternUnits="userSpaceOnUse">
      <path class="tint" d="M0 0H${tile}V${tile}H0z" />
      <path class="threads" d=${threads} stroke-width=${thick} />
    </pattern>
    <path d=${enclosed} fill="url(#${id})" />
  </g>`;
};

/** Longer and wider than anything on a screen. */
const ALL = 'M0 0H9999V9999H0z';

/** The ground of an element of class `weave`. */
export const woven = (hierarchy: number): TemplateResult =>
  html`<svg class="woven" aria-hidden="true">${weave(hierarchy, ALL)}</svg>`;

/** The colours of class `h0`, `h1` or `h2` (the hierarchy), and the cloth of what has class `weave` too. */
export const weaveStyles = css`
  .h0 {
    --tint: var(--units);
    --edge-colour: var(--units-edge);
  }
  .h1 {
    --tint: var(--tens);
    --edge-colour: var(--tens-edge);
  }
  .h2 {
    --tint: var(--hundreds);
    --edge-colour: var(--hundreds-edge);
  }
  .weave {
    position: relative;
    isolation: isolate;
    border-color: var(--edge-colour);
    background-color: var(--tint);
  }
  .woven {
    position: absolute;
    z-index: -1;
    inset: 0;
    width: 100%;
    height: 100%;
    border-radius: inherit;
    pointer-events: none;
  }
  .tint {
    fill: var(--tint);
  }
  .threads {
    stroke: color-mix(in srgb, var(--edge-colour) var(--thread-weight), transparent);
  }
  .stitches {
    display: flex;
    gap: 2px;
  }
  .stitches i {
    width: 2.5px;
    height: 7px;
    border-radius: 2px;
    background: var(--edge-colour);
  }
`;

/** Stitches count the family: none for the simple family, one for thousands, two for millions. */
export const stitches = (family: number): TemplateResult =>
  html`<span class="stitches" aria-hidden="true">${Array.from({ length: Math.abs(family) }, () => html`<i></i>`)}</span>`;
