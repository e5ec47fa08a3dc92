import { AT_THE_PRODUCT } from '../judge/ledger.ts';
import { carriesOf, holdsDigits } from '../judge/paper/lines.ts';
import { multiplied, paperZerosLeftOut, writtenRows } from '../judge/paper/multiplied.ts';
import { pens } from '../judge/paper/pens.ts';
import { isZeroRow } from '../judge/paper/row-steps.ts';
import { readRow, rowsWritten } from '../judge/paper/rows-written.ts';
import { readSum, summing } from '../judge/paper/summing.ts';
import { pointWith } from '../judge/point.ts';
import type { Findings, Scene } from '../judge/scene.ts';
import type { StageRules } from '../judge/stage.ts';
import type { Suggestion } from '../judge/work.ts';
import { LINES } from '../mat/sheet.ts';
import { nextProductFinish, nextRowFinish } from './bar-moves.ts';
import { nextBegin, nextInLine } from './line-moves.ts';
import { nextPoint } from './point-moves.ts';

/** Row by row from the units, carries noted as they come; then the rows are added. */
function next(scene: Scene, findings: Findings): Suggestion | null {
  const rows = scene.plan.up.length === 1 ? nextSingle(scene) : (nextRows(scene) ?? nextSum(scene));
  const [leftOut] = paperZerosLeftOut(scene);
  return rows ?? nextPoint(scene, findings, leftOut) ?? nextProductFinish(scene);
}

/** One row is the product: it is written where the product stands. */
function nextSingle(scene: Scene): Suggestion | null {
  const reading = readRow(multiplied, scene, AT_THE_PRODUCT, 0);
  const beside = reading.spec.line === 0 && holdsDigits(scene.position, 0);
  const line = beside ? 'partial:0' : 'product';
  return nextInLine(scene, reading, { line, carries: 'carry:0', row: 0 });
}

function nextRows(scene: Scene): Suggestion | null {
  for (let row = 0; row < scene.plan.up.length; row += 1) {
    const move =
      nextRow(scene, row) ?? (isZeroRow(scene.plan, row) ? null : nextRowFinish(scene, row));
    if (move !== null) return move;
  }
  return null;
}

/** A row that makes nothing is left out; what was written there and is no zero is rubbed out. */
function nextRow(scene: Scene, row: number): Suggestion | null {
  const reading = readRow(multiplied, scene, { at: 'row', row }, row);
  if (reading.spec.columns.needed === 0 && reading.faults.length === 0) return null;
  const begin = nextBegin(scene, row);
  if (begin !== null) return begin;
  const { line } = reading.spec;
  return nextInLine(scene, reading, { line: LINES[line]!, carries: LINES[carriesOf(line)]!, row });
}

function nextSum(scene: Scene): Suggestion | null {
  const reading = readSum(writtenRows, scene, AT_THE_PRODUCT);
  return nextInLine(scene, reading, { line: 'product', carries: 'carry:product', row: -1 });
}

/** The written algorithm, the numbers printed. */
export const paper: StageRules = {
  id: 'paper',
  aspects: [pens, rowsWritten(multiplied), summing(writtenRows), pointWith(paperZerosLeftOut)],
  next,
};
