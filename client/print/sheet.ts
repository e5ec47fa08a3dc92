import type { SVGTemplateResult } from 'lit';
import { svg } from 'lit';
import { printWords } from '../words/class-print-words.ts';
import { FAINT, INK } from './inks.ts';
import { MARGIN, type PaperName, sizeOf } from './paper.ts';

/** One sheet of paper before it has a size: what it is, which part of it, and what is drawn on it. */
export interface Sheet {
  readonly title: string;
  readonly part: string;
  readonly landscape: boolean;
  readonly content: SVGTemplateResult;
  /** The content is text to be read, not a picture. */
  readonly text: boolean;
}

/** The line by which anybody sees whether the printer kept the size. */
const SCALE = 100;

const ticks = (x: number, y: number): string =>
  Array.from({ length: SCALE / 10 + 1 }, (_, cm) => {
    const length = cm % 5 === 0 ? 3 : 1.8;
    return `M${x + cm * 10} ${y}v${-length}`;
  }).join('');

const scale = (x: number, y: number) => svg`<g class="scale">
  <path d=${`M${x} ${y}h${SCALE}${ticks(x, y)}`} fill="none" stroke=${INK} stroke-width="0.3" />
  <text x=${x} y=${y + 4.2} font-size="3">${printWords('scale')}</text>
</g>`;

/** Browsers set small letters on whole pixels: text is set ten times as large, and drawn a tenth of that. */
const FINE = 10;

/** Lines of text that break where they must: `size` is the height of the letters. */
export const textBox = (
  box: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  },
  size: number,
  text: unknown,
): SVGTemplateResult => svg`<foreignObject
  width=${box.width * FINE}
  height=${box.height * FINE}
  transform=${`translate(${box.x} ${box.y}) scale(${1 / FINE})`}
>
  <div xmlns="http://www.w3.org/1999/xhtml" class="text" dir="auto" .style=${`font-size:${size * FINE}px`}>${text}</div>
</foreignObject>`;

/** The whole sheet as a drawing whose unit is the millimetre. */
export const drawSheet = (sheet: Sheet, paper: PaperName, at: string): SVGTemplateResult => {
  const { width, height } = sizeOf(paper, sheet.landscape);
  const below = height - MARGIN - 12;
  const caution = { x: MARGIN + SCALE + 8, y: below - 3, width: width - 2 * MARGIN - SCALE - 8 };
  return svg`<g fill=${INK}>
    <text x=${MARGIN} y=${MARGIN + 5} font-size="4.6" font-weight="700">${sheet.title}</text>
    <text x=${MARGIN} y=${MARGIN + 10} font-size="3.4">${sheet.part}</text>
    <text x=${width - MARGIN} y=${MARGIN + 5} font-size="3.4" text-anchor="end">${at}</text>
    <path d=${`M${MARGIN} ${height - MARGIN - 16}H${width - MARGIN}`} stroke=${FAINT} stroke-width="0.2" />
    ${scale(MARGIN, below + 1.5)}
    ${textBox({ ...caution, height: 15 }, 2.7, printWords('caution'))}
    ${sheet.content}
  </g>`;
};
