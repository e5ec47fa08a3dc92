import type { LineDigits } from '../../mat/position.ts';
import { remembered } from '../memo.ts';
import type { Moment, Plan, Scene } from '../scene.ts';
import { atLeastOne, type Columns, productColumns } from './columns.ts';
import { holdsDigits, PARTIALS, rowLines } from './lines.ts';
import { isZeroRow } from './row-steps.ts';
import { type RowSource, readRow } from './rows-written.ts';
import { type Addends, readSum, type Sums, zerosLeftOut } from './summing.ts';

/** Rows of the written algorithm: the printed multiplicand times one digit, carries written or in the head. */
export const multiplied: RowSource = {
  applies: () => true,
  columns: ({ plan, memo }, row) =>
    remembered(memo, 'columns of the rows', [plan], () =>
      plan.up.map((_, each) => columnsOf(plan, each)),
    )[row]!,
  ready: () => true,
};

function columnsOf(plan: Plan, row: number): readonly Columns[] {
  const columns = productColumns(plan.across, plan.up[row]!);
  return [plan.up.length === 1 ? atLeastOne(columns) : columns];
}

/** The rows as they stand on paper, right or wrong, each digit at its place. */
export const writtenRows: Addends = {
  applies: ({ up }) => up.length > 1,
  sums: ({ plan, position, memo }) => {
    const rows = plan.up.map((_, row) => position.paper.lines[PARTIALS[row]!]);
    return remembered(memo, 'rows to add', rows, () => sumsOf(plan, rows));
  },
  ready: (scene) => {
    let ready = Number.POSITIVE_INFINITY;
    for (let row = 0; row < scene.plan.up.length; row += 1)
      ready = Math.min(ready, rowReady(scene, row));
    return ready;
  },
};

function sumsOf(plan: Plan, rows: readonly (LineDigits | undefined)[]): Sums {
  const places = plan.rows + plan.columns;
  const sums = Array.from({ length: places }, () => ({ base: 0, reaching: 0 }));
  for (const line of rows) {
    if (line !== undefined) addLine(sums, line, plan.problem.mat.origin);
  }
  return sums;
}

function addLine(
  sums: { base: number; reaching: number }[],
  digits: Readonly<Record<string, number>>,
  origin: number,
): void {
  const places = Object.keys(digits).map((place) => Number(place) - origin);
  for (let at = Math.min(...places); at <= Math.max(...places); at += 1) {
    const sum = sums[at]!;
    sum.base += digits[origin + at] ?? 0;
    sum.reaching += 1;
  }
}

/** So many places from the origin are written in a row; a row that is finished or makes nothing holds up none. */
function rowReady(scene: Scene, row: number): number {
  const { plan, position } = scene;
  if (isZeroRow(plan, row) || position.finished.rows.includes(row)) return Number.POSITIVE_INFINITY;
  const { line } = rowLines(scene)[row]!;
  if (line === null || !holdsDigits(position, line)) return 0;
  const { spec, shift, reads } = readRow(multiplied, scene, { at: 'row', row }, row);
  const gap = reads.findIndex(({ mark }) => mark === 'missing');
  return gap < 0 ? Number.POSITIVE_INFINITY : spec.lowest + shift + gap;
}

/** The zeros that the child left out at the end of the product, on whichever line it stands. */
export function paperZerosLeftOut(scene: Scene): readonly number[] {
  const moment: Moment = { at: 'product' };
  const single = scene.plan.up.length === 1;
  const reading = single
    ? readRow(multiplied, scene, moment, 0)
    : readSum(writtenRows, scene, moment);
  return zerosLeftOut(reading);
}
