import { type SVGTemplateResult, svg } from 'lit';
import { placeName } from '../../engine/child.ts';
import { pointSign } from '../words/words.ts';
import { EDGES, FAINT, INK, type Inks } from './inks.ts';
import { labelOf, tileSide } from './mat-plan.ts';
import { clothInks, weaveOf } from './weave.ts';

interface At {
  readonly x: number;
  readonly y: number;
}

const STITCH = { width: 0.7, gap: 1.4 };

/** Stitches count the family: none for the simple family, one for thousands, two for millions. */
const stitches = (right: number, y: number, family: number, height: number, colour: string) =>
  svg`<path d=${Array.from({ length: Math.abs(family) }, (_, i) => `M${right - i * STITCH.gap} ${y}v${height}`).join('')} stroke=${colour} stroke-width=${STITCH.width} fill="none" />`;

/** One square: its cut edge exactly `side` long, inside it the cloth with the strong edge of its place; dashed below the point. */
export const drawSquare = (
  place: number,
  side: number,
  { x, y }: At,
  inks: Inks,
): SVGTemplateResult => {
  const { hierarchy, family } = placeName(place);
  const { tint, edge, thread, opacity } = clothInks(hierarchy, inks);
  const border = Math.min(1.1, side * 0.03);
  const inset = Math.min(1.6, side * 0.05);
  const cloth = side - 2 * inset;
  const dashes = place < 0 ? `${side / 14} ${side / 22}` : 'none';
  return svg`<g class="square" transform=${`translate(${x} ${y})`}>
    <rect class="cut" width=${side} height=${side} fill="none" stroke=${FAINT} stroke-width="0.2" />
    <g transform=${`translate(${inset} ${inset})`}>
      <rect width=${cloth} height=${cloth} fill=${tint} />
      <path d=${weaveOf(hierarchy, cloth)} fill="none" stroke=${edge} stroke-width=${thread} opacity=${opacity} />
      <rect width=${cloth} height=${cloth} fill="none" stroke=${edge} stroke-width=${border} stroke-dasharray=${dashes} />
    </g>
    ${stitches(side - inset - border - 1, inset + border + 0.7, family, Math.min(4, side * 0.12), edge)}
  </g>`;
};

/** 1, 10, 100 and 0.1, 0.01, 0.001; the family is shown by stitches. */
const labelText = (place: number): string => {
  const { hierarchy } = placeName(place);
  if (place >= 0) return ['1', '10', '100'][hierarchy] ?? '';
  return `0${pointSign}${['001', '1', '01'][hierarchy]}`;
};

const familyShown = (place: number): number => {
  const { hierarchy, family } = placeName(place);
  return place < 0 && hierarchy === 0 ? family + 1 : family;
};

/** The slot for a tile beside or below the mat, with the label of its place; `width` × `height`: the strip's part. */
export const drawSlot = (
  place: number,
  side: number,
  { x, y, width, height }: At & { readonly width: number; readonly height: number },
  inks: Inks,
): SVGTemplateResult => {
  const tile = tileSide(side);
  const label = labelOf(side);
  const { hierarchy } = placeName(place);
  const colour = inks === 'colour' ? (EDGES[hierarchy] ?? INK) : INK;
  const left = x + (width - tile) / 2;
  const top = y + Math.max(1, (height - tile - label) / 2);
  const base = top + tile + label * 0.85;
  const family = familyShown(place);
  const text = labelText(place);
  return svg`<g class="slot">
    <rect x=${left} y=${top} width=${tile} height=${tile} rx="1.5" fill="none" stroke=${FAINT} stroke-width="0.3" stroke-dasharray="1.6 1.2" />
    <text x=${x + width / 2} y=${base} font-size=${label * 0.8} text-anchor="middle">${text}</text>
    ${stitches(x + width / 2 + text.length * label * 0.24 + 1.6 + (Math.abs(family) - 1) * STITCH.gap, base - label * 0.6, family, label * 0.6, colour)}
  </g>`;
};
