import { css, html, type TemplateResult } from 'lit';

/**
 * The cloth: plain weave for units, twill for tens, basket weave for hundreds, so that colour is never the only sign.
 * Use with class `weave h0`, `h1` or `h2` (the hierarchy). Painted by gradients alone: no picture has to be fetched.
 */
export const weaveStyles = css`
  .weave {
    --thread: color-mix(in srgb, var(--edge-colour) var(--thread-weight), transparent);
    border-color: var(--edge-colour);
    background-color: var(--tint);
  }
  .h0 {
    --tint: var(--units);
    --edge-colour: var(--units-edge);
    background-image:
      conic-gradient(at 4px 1.6px, transparent 75%, var(--thread) 0),
      conic-gradient(at 4px 1.6px, transparent 75%, var(--thread) 0),
      conic-gradient(at 1.6px 4px, transparent 75%, var(--thread) 0),
      conic-gradient(at 1.6px 4px, transparent 75%, var(--thread) 0);
    background-size: 8px 8px;
    background-position:
      0 1.2px,
      4px 5.2px,
      5.2px 0,
      1.2px 4px;
  }
  .h1 {
    --tint: var(--tens);
    --edge-colour: var(--tens-edge);
    /* Two threads a tile: where a browser paints without a graphics card, a repeating gradient ended after three. */
    background-image: linear-gradient(
      135deg,
      var(--thread) 16%,
      transparent 0 50%,
      var(--thread) 0 66%,
      transparent 0
    );
    background-size: 8px 8px;
  }
  .h2 {
    --tint: var(--hundreds);
    --edge-colour: var(--hundreds-edge);
    background-image:
      conic-gradient(at 7px 1.6px, transparent 75%, var(--thread) 0),
      conic-gradient(at 7px 1.6px, transparent 75%, var(--thread) 0),
      conic-gradient(at 7px 1.6px, transparent 75%, var(--thread) 0),
      conic-gradient(at 7px 1.6px, transparent 75%, var(--thread) 0),
      conic-gradient(at 1.6px 7px, transparent 75%, var(--thread) 0),
      conic-gradient(at 1.6px 7px, transparent 75%, var(--thread) 0),
      conic-gradient(at 1.6px 7px, transparent 75%, var(--thread) 0),
      conic-gradient(at 1.6px 7px, transparent 75%, var(--thread) 0);
    background-size: 14px 14px;
    background-position:
      0 1px,
      0 4.6px,
      7px 8px,
      7px 11.6px,
      8px 0,
      11.6px 0,
      1px 7px,
      4.6px 7px;
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
