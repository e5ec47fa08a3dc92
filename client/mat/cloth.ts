import type { SVGTemplateResult } from 'lit';
import { placeName } from '../../engine/child.ts';
import { weave } from '../ui/weave.ts';
import { GAP } from './geometry.ts';
import type { MatView } from './view.ts';

/** The cloth ends under its square's border, so that its corners need not be round. */
const UNDER = 2;

/** Whatever is drawn of the cloth follows from these. */
export const clothFrom = ({ shape, squares }: MatView, side: number): readonly unknown[] => [
  shape,
  side,
  squares.flatMap((row) => row.map(({ again }) => Number(again))).join(''),
];

/** The woven cloth of all squares at once; a square that is lifted has its own. Lengths in pixels, `side` of a square. */
export const drawCloth = ({ shape, squares }: MatView, side: number): SVGTemplateResult[] => {
  const step = side + GAP;
  const long = side - 2 * UNDER;
  const enclosed = ['', '', ''];
  for (const [r, row] of squares.entries())
    for (const [c, { again }] of row.entries()) {
      const x = (shape.columns - 1 - c) * step + UNDER;
      const y = (shape.rows - 1 - r) * step + UNDER;
      const { hierarchy } = placeName(shape.origin + r + c);
      if (!again) enclosed[hierarchy] += `M${x} ${y}h${long}v${long}h${-long}z`;
    }
  return enclosed.map((path, hierarchy) => weave(hierarchy, path));
};
