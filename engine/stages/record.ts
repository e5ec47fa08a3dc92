import { counting } from '../judge/counting.ts';
import { laying } from '../judge/laying.ts';
import { lineOfRow, rowKey } from '../judge/lines.ts';
import { pointWith } from '../judge/point.ts';
import { productLine, zerosLeftOut } from '../judge/reading.ts';
import { recording } from '../judge/recording.ts';
import { rowLaid, sayable } from '../judge/rows.ts';
import type { Finding, Scene } from '../judge/scene.ts';
import { settling } from '../judge/settling.ts';
import { sliding } from '../judge/sliding.ts';
import type { StageRules } from '../judge/stage.ts';
import { tiles } from '../judge/tiles.ts';
import type { Suggestion } from '../judge/work.ts';
import type { Line } from '../mat/action.ts';
import { digitsOf } from '../numerals/numeral.ts';
import { nextProduct, nextRows } from './bar-moves.ts';
import { nextBegin, nextOnLine, rowDigits } from './line-moves.ts';

/** Each row's partial product is written as soon as it lies there, while it can still be read. */
function nextRecord(scene: Scene, findings: readonly Finding[], row: number): Suggestion | null {
  const { plan, ledger } = scene;
  if (plan.up.length === 1 || plan.up[row] === 0) return null;
  const value = sayable(scene, row)[0]!;
  const hidden =
    (ledger.disturbed & (1 << row)) !== 0 && lineOfRow(scene, row) === null && !rowLaid(scene, row);
  if (hidden || value < 0n) return null;
  const begin = nextBegin(scene, row);
  if (begin !== null) return begin;
  const due = rowDigits(
    row,
    digitsOf(value / 10n ** BigInt(row)),
    value === 0n && plan.partials[row]!.some((digit) => digit > 0),
  );
  const { origin } = plan.problem.mat;
  return nextOnLine(scene, {
    line: lineOfRow(scene, row) as Line,
    due,
    findings,
    stepAt: (place) =>
      place - origin < row ? `zero:${row}:${place - origin}` : rowKey(row, place),
    move: 'writePartial',
  });
}

/** As bars, with every partial product written instead of said. */
export const record: StageRules = {
  id: 'record',
  aspects: [
    tiles,
    laying,
    counting,
    recording,
    sliding,
    settling,
    productLine,
    pointWith(zerosLeftOut),
  ],
  next: (scene, findings) =>
    nextRows(scene, (row) => nextRecord(scene, findings, row)) ?? nextProduct(scene, findings),
};
