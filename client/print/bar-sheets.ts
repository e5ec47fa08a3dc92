import { svg } from 'lit';
import { printWords } from '../words/class-print-words.ts';
import type { Choice } from './choice.ts';
import { flow, type Placed } from './flow.ts';
import { BEADS, FAINT, INK, PAPER } from './inks.ts';
import { beadOf, planMat } from './mat-plan.ts';
import { areaOf } from './paper.ts';
import type { Sheet } from './sheet.ts';

interface Bar {
  readonly width: number;
  readonly height: number;
  readonly kind: number;
}

/** White paper round the beads, so that scissors need not be exact. */
const RIM = 1;

const barsOf = ({ barSets, numbers }: Choice, bead: number): Bar[] =>
  Array.from({ length: 10 }, (_, i) => 10 - i).flatMap((kind) =>
    Array.from({ length: barSets }, () => ({
      kind,
      width: (kind + (numbers ? 1.2 : 0)) * bead + 2 * RIM,
      height: bead + 2 * RIM,
    })),
  );

const draw = ({ x, y, width, height, kind }: Placed<Bar>, bead: number, choice: Choice) => {
  const fill = choice.inks === 'colour' ? (BEADS[choice.beads][kind - 1] ?? PAPER) : PAPER;
  const middle = height / 2;
  const line = Math.max(0.15, bead * 0.06);
  const beads = Array.from(
    { length: kind },
    (_, i) =>
      svg`<circle cx=${RIM + (i + 0.5) * bead} cy=${middle} r=${bead * 0.47 - line / 2} fill=${fill} />`,
  );
  const number = choice.numbers
    ? svg`<text x=${width - RIM - bead * 0.55} y=${middle + bead * 0.3} font-size=${bead * 0.85} font-weight="700" text-anchor="middle" stroke="none">${kind}</text>`
    : null;
  return svg`<g class="bar" transform=${`translate(${x} ${y})`}>
    <rect class="cut" width=${width} height=${height} fill="none" stroke=${FAINT} stroke-width="0.2" />
    <g stroke=${INK} stroke-width=${line}><path d=${`M${RIM * 0.4} ${middle}h${kind * bead + RIM * 1.2}`} />${beads}${number}</g>
  </g>`;
};

/** Bead bars to cut out, in the size of the chosen mat: the longest lies in its square. */
export const barSheets = (choice: Choice): Sheet[] => {
  const bead = beadOf(planMat(choice, choice.side, choice.paper).side);
  const pages = flow(barsOf(choice, bead), areaOf(choice.paper));
  return pages.map((page) => ({
    title: printWords('barsTitle', { bead }),
    part: printWords('barsPart'),
    landscape: false,
    text: false,
    content: svg`${page.map((bar) => draw(bar, bead, choice))}`,
  }));
};
