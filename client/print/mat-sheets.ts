import { type SVGTemplateResult, svg } from 'lit';
import { printWords } from '../words/class-print-words.ts';
import type { Choice } from './choice.ts';
import { INK } from './inks.ts';
import { drawSlot, drawSquare } from './mat-parts.ts';
import { type MatPlan, originOf, planMat, sheetsIn } from './mat-plan.ts';
import type { Sheet } from './sheet.ts';
import { letterOf, type Run } from './tiling.ts';

interface Cell {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** What is at a cell of the grid of squares and strips, counted from the upper left. */
const drawCell = (
  choice: Choice,
  plan: MatPlan,
  column: number,
  row: number,
  cell: Cell,
): SVGTemplateResult | null => {
  const { rows, columns, decimals, inks } = choice;
  const fromRight = columns - 1 - column;
  const fromBelow = rows - 1 - row;
  const inMat = { across: fromRight >= 0, up: fromBelow >= 0 };
  if (inMat.across && inMat.up)
    return drawSquare(fromRight + fromBelow - decimals, plan.side, cell, inks);
  const { below, beside } = lowestOf(decimals);
  if (inMat.across) return drawSlot(fromRight - below, plan.side, cell, inks);
  return inMat.up ? drawSlot(fromBelow - beside, plan.side, cell, inks) : null;
};

/** The two edges share the places after the point, the number below first: the lower right square is their product. */
const lowestOf = (decimals: number) => {
  const beside = Math.floor(decimals / 2);
  return { below: decimals - beside, beside };
};

const cellsOf = (choice: Choice, plan: MatPlan, across: Run, down: Run) => {
  const start = originOf(plan, across, down, choice.paper);
  const drawn: (SVGTemplateResult | null)[] = [];
  let y = start.y;
  for (let row = down.from; row < down.to; row += 1) {
    const height = plan.down[row] ?? 0;
    let x = start.x;
    for (let column = across.from; column < across.to; column += 1) {
      const width = plan.across[column] ?? 0;
      drawn.push(drawCell(choice, plan, column, row, { x, y, width, height }));
      x += width;
    }
    y += height;
  }
  return drawn;
};

interface Seam {
  readonly letter: string;
  readonly side: 'left' | 'right' | 'top' | 'bottom';
}

/** Every seam between two sheets has a letter of its own, printed on both. */
const seamsAt = (plan: MatPlan, i: number, j: number): Seam[] => {
  const [wide, high] = [plan.acrossRuns.length, plan.downRuns.length];
  const upright = (at: number) => letterOf(j * (wide - 1) + at);
  const level = (at: number) => letterOf(high * (wide - 1) + at * wide + i);
  const seams: Seam[] = [];
  if (i > 0) seams.push({ side: 'left', letter: upright(i - 1) });
  if (i < wide - 1) seams.push({ side: 'right', letter: upright(i) });
  if (j > 0) seams.push({ side: 'top', letter: level(j - 1) });
  if (j < high - 1) seams.push({ side: 'bottom', letter: level(j) });
  return seams;
};

/** An arrow that touches the edge to be joined, and the letter of its seam. */
const drawSeam = ({ side, letter }: Seam, box: ReturnType<typeof originOf>) => {
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const ends = {
    left: { x: box.x, y: middle.y, turn: 180 },
    right: { x: box.x + box.width, y: middle.y, turn: 0 },
    top: { x: middle.x, y: box.y, turn: 270 },
    bottom: { x: middle.x, y: box.y + box.height, turn: 90 },
  };
  const { x, y, turn } = ends[side];
  const text = { left: [-4, 5], right: [4, 5], top: [4.5, -1.6], bottom: [4.5, 4.4] }[side];
  return svg`<g class="seam">
    <path d="M0.4 0L3.6 -1.8V1.8z" transform=${`translate(${x} ${y}) rotate(${turn})`} fill=${INK} />
    <text x=${x + (text[0] ?? 0)} y=${y + (text[1] ?? 0)} font-size="3.6" font-weight="700" text-anchor="middle">${letter}</text>
  </g>`;
};

const titleOf = ({ rows, columns }: Choice, plan: MatPlan): string =>
  printWords('matTitle', { rows, columns, side: plan.side });

const partOf = (plan: MatPlan, i: number, j: number): string => {
  if (sheetsIn(plan) === 1) return printWords('matWhole');
  const values = {
    row: j + 1,
    rows: plan.downRuns.length,
    column: i + 1,
    columns: plan.acrossRuns.length,
  };
  return printWords('matPart', values);
};

/** The mat, on one sheet or on several that are joined by their letters. */
export const matSheets = (choice: Choice): Sheet[] => {
  const plan = planMat(choice, choice.side, choice.paper);
  return plan.downRuns.flatMap((down, j) =>
    plan.acrossRuns.map((across, i) => {
      const box = originOf(plan, across, down, choice.paper);
      return {
        title: titleOf(choice, plan),
        part: partOf(plan, i, j),
        landscape: plan.landscape,
        text: false,
        content: svg`${cellsOf(choice, plan, across, down)}${seamsAt(plan, i, j).map((seam) => drawSeam(seam, box))}`,
      };
    }),
  );
};
