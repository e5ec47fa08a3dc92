import { MAT_LIMITS } from '../../mat/geometry.ts';
import type { Digits, Sheet } from '../../mat/sheet.ts';
import { AT_THE_PRODUCT } from '../ledger.ts';
import { kept, recalled, slots } from '../memo.ts';
import type { Plan, Scene } from '../scene.ts';
import { atLeastOne, type Columns, productColumns } from './columns.ts';
import { holdsDigits, rowLines } from './lines.ts';
import { isZeroRow } from './row-steps.ts';
import { type RowSource, readRow } from './rows-written.ts';
import { type Addends, noSums, readSum, type Sums, zerosLeftOut } from './summing.ts';

const COLUMNS = slots(MAT_LIMITS.rows.most);
const ADDENDS = slots(1);
const READY = slots(1);

/** Rows of the written algorithm: the printed multiplicand times one digit, carries written or in the head. */
export const multiplied: RowSource = {
  applies: () => true,
  columns: ({ plan }, row) =>
    recalled(plan.memo, COLUMNS + row, plan) ??
    kept(plan.memo, COLUMNS + row, columnsOf(plan, row), plan),
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
    const { lines } = position.paper;
    const [a, b, c] = [lines[0], lines[1], lines[2]];
    const [d, e, f] = [lines[3], lines[4], lines[5]];
    return (
      recalled(memo, ADDENDS, a, b, c, d, e, f) ??
      kept(memo, ADDENDS, sumsOf(plan, position.paper), a, b, c, d, e, f)
    );
  },
  ready: (scene) => {
    const { memo, position, ledger, claims } = scene;
    const { kept: lines, begun, strokes } = position.paper;
    const { rows } = position.finished;
    const sums = writtenRows.sums(scene);
    return (
      recalled(
        memo,
        READY,
        sums,
        lines,
        begun,
        rows,
        strokes,
        ledger.onPaper.pens,
        ledger.onPaper.lines,
        claims,
      ) ??
      kept(
        memo,
        READY,
        rowsReady(scene),
        sums,
        lines,
        begun,
        rows,
        strokes,
        ledger.onPaper.pens,
        ledger.onPaper.lines,
        claims,
      )
    );
  },
};

function rowsReady(scene: Scene): number {
  let ready = Number.POSITIVE_INFINITY;
  for (let row = 0; row < scene.plan.up.length; row += 1)
    ready = Math.min(ready, rowReady(scene, row));
  return ready;
}

function sumsOf(plan: Plan, { lines }: Sheet): Sums {
  const sums = noSums(plan);
  for (let row = 0; row < plan.up.length; row += 1) {
    const line = lines[row];
    if (line !== undefined) addLine(sums, line);
  }
  return sums;
}

/** A place left empty between two digits of a line is a 0. */
function addLine(sums: { base: number; reaching: number }[], digits: Digits): void {
  let last = digits.length - 1;
  while (last >= 0 && digits[last] === undefined) last -= 1;
  let at = 0;
  while (digits[at] === undefined && at < last) at += 1;
  for (; at <= last; at += 1) {
    const sum = sums[at]!;
    sum.base += digits[at] ?? 0;
    sum.reaching += 1;
  }
}

/** So many places from the origin are written in a row; a row that is finished or makes nothing holds up none. */
function rowReady(scene: Scene, row: number): number {
  const { plan, position } = scene;
  if (isZeroRow(plan, row) || position.finished.rows.includes(row)) return Number.POSITIVE_INFINITY;
  const { line } = rowLines(scene)[row]!;
  if (!holdsDigits(position, line)) return 0;
  const { spec, shift, reads } = readRow(multiplied, scene, { at: 'row', row }, row);
  const gap = reads.findIndex(({ mark }) => mark === 'missing');
  return gap < 0 ? Number.POSITIVE_INFINITY : spec.lowest + shift + gap;
}

/** The zeros that the child left out at the end of the product, on whichever line it stands. */
export function paperZerosLeftOut(scene: Scene): readonly number[] {
  const single = scene.plan.up.length === 1;
  const reading = single
    ? readRow(multiplied, scene, AT_THE_PRODUCT, 0)
    : readSum(writtenRows, scene, AT_THE_PRODUCT);
  return zerosLeftOut(reading);
}
