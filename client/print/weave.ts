import { EDGES, FAINT, type Inks, TINTS } from './inks.ts';

/** Plain weave: single threads over and under. */
const plain = (side: number): string => {
  const pitch = side / 8;
  const half = pitch * 0.62;
  let path = '';
  for (let row = 0; row < 8; row += 1)
    for (let column = 0; column < 8; column += 1) {
      const x = (column + 0.5) * pitch;
      const y = (row + 0.5) * pitch;
      path +=
        (row + column) % 2 === 0
          ? `M${short(x - half / 2)} ${short(y)}h${short(half)}`
          : `M${short(x)} ${short(y - half / 2)}v${short(half)}`;
    }
  return path;
};

/** Twill: slanting ribs, from edge to edge. */
const twill = (side: number): string => {
  const pitch = side / 6;
  let path = '';
  for (let from = pitch / 2; from < 2 * side; from += pitch) {
    const start = Math.min(from, side);
    const rest = from - start;
    const run = start - rest;
    if (run > 0) path += `M${short(rest)} ${short(start)}l${short(run)} ${short(-run)}`;
  }
  return path;
};

/** Basket weave: pairs of threads over and under. */
const basket = (side: number): string => {
  const cells = 5;
  const pitch = side / cells;
  const [gap, length] = [pitch * 0.16, pitch * 0.74];
  let path = '';
  for (let row = 0; row < cells; row += 1)
    for (let column = 0; column < cells; column += 1) {
      const x = (column + 0.5) * pitch;
      const y = (row + 0.5) * pitch;
      for (const by of [-gap, gap])
        path +=
          (row + column) % 2 === 0
            ? `M${short(x - length / 2)} ${short(y + by)}h${short(length)}`
            : `M${short(x + by)} ${short(y - length / 2)}v${short(length)}`;
    }
  return path;
};

const short = (length: number): number => Math.round(length * 100) / 100;
const WEAVES = [plain, twill, basket];

/** The weave of a hierarchy as strokes inside a square of that side, its corner at 0, 0. */
export const weaveOf = (hierarchy: number, side: number): string => WEAVES[hierarchy]?.(side) ?? '';

/** How cloth of a hierarchy is printed: ink is saved by leaving the tint away and thinning the threads. */
export const clothInks = (hierarchy: number, inks: Inks) => {
  const colour = inks === 'colour';
  return {
    tint: colour ? (TINTS[hierarchy] ?? 'none') : 'none',
    edge: colour ? (EDGES[hierarchy] ?? FAINT) : FAINT,
    thread: colour ? 0.3 : 0.15,
    opacity: colour ? 0.3 : 0.55,
  };
};
