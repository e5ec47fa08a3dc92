import { columnDue } from '../judge/columns.ts';
import { digitsOn, hasDigits, rowKey } from '../judge/lines.ts';
import { pointWith } from '../judge/point.ts';
import type { BarePlan, Finding, Scene } from '../judge/scene.ts';
import type { StageRules } from '../judge/stage.ts';
import { type SumsOf, sumsAspect, sumZerosLeftOut } from '../judge/sums.ts';
import type { Suggestion } from '../judge/work.ts';
import { lineOf, rowsWritten, working } from '../judge/working.ts';
import type { Line } from '../mat/action.ts';
import { nextPoint, nextProductFinish, nextRowFinish } from './bar-moves.ts';
import { nextBegin, nextOnLine, rowDigits } from './line-moves.ts';

/** All rows as they are written, at the places where they stand. */
const SUMS: SumsOf = {
  addends: (scene) => {
    const length = scene.plan.rows + scene.plan.columns;
    const base = Array.from({ length }, () => 0);
    const counts = base.slice();
    for (const line of Object.keys(scene.position.paper.lines)) {
      if (!line.startsWith('partial:')) continue;
      for (const [index, digit] of digitsOn(scene, line).entries()) {
        base[index]! += digit ?? 0;
        counts[index]! += digit === undefined ? 0 : 1;
      }
    }
    return { base, counts };
  },
  ready: rowsWritten,
  applies: (plan: BarePlan) => plan.up.length > 1,
};

/** With one row the zeros at its end are those of the row. */
function rowZerosLeftOut(scene: Scene): number {
  if (scene.plan.up.length > 1) return sumZerosLeftOut(SUMS)(scene);
  const { line } = lineOf(scene, 0)!;
  const { origin } = scene.plan.problem.mat;
  const first = digitsOn(scene, line).findIndex((digit) => digit !== undefined);
  const zeros = scene.plan.product.findIndex((digit) => digit !== 0);
  return hasDigits(scene, line) ? Math.max(0, Math.min(first, zeros, -origin)) : 0;
}

function nextRow(scene: Scene, findings: readonly Finding[], row: number): Suggestion | null {
  const { plan } = scene;
  if (plan.up[row] === 0 && plan.up.length > 1) return nextRowFinish(scene, row);
  const begin = nextBegin(scene, row);
  if (begin !== null) return begin;
  const lines = lineOf(scene, row);
  if (lines === null) return nextRowFinish(scene, row);
  const { origin } = plan.problem.mat;
  const base = plan.across.map((digit) => digit * plan.up[row]!);
  const carries = digitsOn(scene, lines.carryLine).slice(row);
  const due = rowDigits(
    row,
    columnDue(base, digitsOn(scene, lines.line).slice(row), carries),
    false,
  );
  const digit = nextOnLine(scene, {
    line: lines.line as Line,
    due,
    findings,
    stepAt: (place) =>
      place - origin < row ? `zero:${row}:${place - origin}` : rowKey(row, place),
    move: 'writePartial',
  });
  return digit ?? nextRowFinish(scene, row);
}

function nextSum(scene: Scene, findings: readonly Finding[]): Suggestion | null {
  if (scene.plan.up.length === 1) return null;
  const { base } = SUMS.addends(scene);
  const carries = digitsOn(scene, 'carry:product');
  const due = columnDue(base, digitsOn(scene, 'product'), carries);
  return nextOnLine(scene, {
    line: 'product',
    due,
    findings,
    stepAt: (place) => `sum:${place}`,
    move: 'writeSum',
  });
}

function next(scene: Scene, findings: readonly Finding[]): Suggestion | null {
  for (let row = 0; row < scene.plan.up.length; row += 1) {
    const move = nextRow(scene, findings, row);
    if (move !== null) return move;
  }
  return nextSum(scene, findings) ?? nextPoint(scene, findings) ?? nextProductFinish(scene);
}

/** The written algorithm, the numbers printed: rows, placeholders, the sum. */
export const paper: StageRules = {
  id: 'paper',
  aspects: [working, sumsAspect(SUMS), pointWith(rowZerosLeftOut)],
  next,
};
