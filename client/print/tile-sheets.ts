import { svg } from 'lit';
import { printWords } from '../words/class-print-words.ts';
import type { Choice } from './choice.ts';
import { flow, type Placed } from './flow.ts';
import { FAINT, TILE_BELOW } from './inks.ts';
import { planMat, tileSide } from './mat-plan.ts';
import { areaOf } from './paper.ts';
import type { Sheet } from './sheet.ts';

interface Tile {
  readonly width: number;
  readonly height: number;
  readonly digit: number;
  /** For the number below (grey) or the number at the side (white, its digit underlined so that no colour is needed). */
  readonly edge: 'bottom' | 'right';
}

const tilesOf = ({ tileSets }: Choice, side: number): Tile[] =>
  (['bottom', 'right'] as const).flatMap((edge) =>
    Array.from({ length: 10 * tileSets }, (_, i) => ({
      width: side,
      height: side,
      digit: Math.floor(i / tileSets),
      edge,
    })),
  );

/** A bar under 6 and 9 tells them apart however they lie. */
const footOf = ({ digit, width }: Tile): string =>
  digit === 6 || digit === 9 ? `M${width * 0.36} ${width * 0.84}h${width * 0.28}` : '';

const draw = (tile: Placed<Tile>, inks: Choice['inks']) => {
  const { x, y, width, digit, edge } = tile;
  const grey = edge === 'bottom';
  const fill = grey && inks === 'colour' ? TILE_BELOW : 'none';
  const frame = grey
    ? svg`<rect x="1.2" y="1.2" width=${width - 2.4} height=${width - 2.4} fill=${fill} stroke=${FAINT} stroke-width="0.5" rx="1" />`
    : null;
  return svg`<g class="tile" transform=${`translate(${x} ${y})`}>
    <rect class="cut" width=${width} height=${width} fill="none" stroke=${FAINT} stroke-width="0.2" />${frame}
    <text x=${width / 2} y=${width * 0.72} font-size=${width * 0.62} font-weight="700" text-anchor="middle">${digit}</text>
    <path d=${footOf(tile)} stroke="currentColor" stroke-width=${width * 0.04} />
  </g>`;
};

/** Number tiles that fit the slots of the chosen mat: for the number below framed and grey, for the one at the side plain. */
export const tileSheets = (choice: Choice): Sheet[] => {
  const side = tileSide(planMat(choice, choice.side, choice.paper).side);
  const pages = flow(tilesOf(choice, side), areaOf(choice.paper));
  return pages.map((page) => ({
    title: printWords('tilesTitle', { side }),
    part: printWords('tilesPart'),
    landscape: false,
    text: false,
    content: svg`${page.map((tile) => draw(tile, choice.inks))}`,
  }));
};
