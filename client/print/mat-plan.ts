import type { Side } from './choice.ts';
import { areaOf, type PaperName } from './paper.ts';
import { lengthOf, type Run, runsOf } from './tiling.ts';

/** The tile that belongs to squares of a side, and the strip beside the mat that holds it with its place's label. */
export const tileSide = (side: number): number => Math.max(8, Math.min(30, Math.round(side * 0.6)));
export const stripOf = (side: number): number => tileSide(side) + labelOf(side) + 3;
export const labelOf = (side: number): number => Math.max(4, Math.min(8, side * 0.14));
/** Distance from bead to bead: a ten-bar lies in its square with room round it. */
export const beadOf = (side: number): number => Math.floor(side - 4) / 10;

/** Room round the mat on every sheet for the marks that tell which edge meets which. */
const MARKS = 6;
/** The smallest side at which a mat is still worth laying. */
const LEAST_SIDE = 8;

export interface MatPlan {
  readonly side: number;
  readonly landscape: boolean;
  /** From the left: the columns, highest first, and the strip; from the top the same. */
  readonly across: readonly number[];
  readonly down: readonly number[];
  readonly acrossRuns: readonly Run[];
  readonly downRuns: readonly Run[];
}

interface Shape {
  readonly rows: number;
  readonly columns: number;
}

const roomOf = (paper: PaperName, landscape: boolean) => {
  const { width, height } = areaOf(paper, landscape);
  return { width: width - 2 * MARKS, height: height - 2 * MARKS };
};

/** The largest side, in halves of a millimetre, with which mat and strips stay on one sheet. */
const largestSide = ({ rows, columns }: Shape, paper: PaperName, landscape: boolean): number => {
  const { width, height } = roomOf(paper, landscape);
  const fits = (side: number) =>
    columns * side + stripOf(side) <= width && rows * side + stripOf(side) <= height;
  let side = LEAST_SIDE;
  while (side < 70 && fits(side + 0.5)) side += 0.5;
  return side;
};

const planFor = (
  { rows, columns }: Shape,
  side: number,
  paper: PaperName,
  landscape: boolean,
): MatPlan => {
  const { width, height } = roomOf(paper, landscape);
  const strip = stripOf(side);
  const across = [...Array<number>(columns).fill(side), strip];
  const down = [...Array<number>(rows).fill(side), strip];
  const runs = { acrossRuns: runsOf(across, width), downRuns: runsOf(down, height) };
  return { side, landscape, across, down, ...runs };
};

export const sheetsIn = ({ acrossRuns, downRuns }: MatPlan): number =>
  acrossRuns.length * downRuns.length;

/** The way round that takes the fewest sheets, or on one sheet the largest squares; upright where both are equal. */
export const planMat = (shape: Shape, side: Side, paper: PaperName): MatPlan => {
  const [upright, across] = [false, true].map((landscape) =>
    planFor(
      shape,
      side === 'whole' ? largestSide(shape, paper, landscape) : side,
      paper,
      landscape,
    ),
  ) as [MatPlan, MatPlan];
  if (side === 'whole') return across.side > upright.side ? across : upright;
  return sheetsIn(across) < sheetsIn(upright) ? across : upright;
};

/** Where the part of a run begins on its sheet: centred, with the marks' room kept free. */
export const originOf = (plan: MatPlan, across: Run, down: Run, paper: PaperName) => {
  const area = areaOf(paper, plan.landscape);
  const [width, height] = [lengthOf(plan.across, across), lengthOf(plan.down, down)];
  return {
    x: area.x + (area.width - width) / 2,
    y: area.y + Math.max(MARKS, (area.height - height) / 2),
    width,
    height,
  };
};
