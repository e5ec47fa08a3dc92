import { counting } from '../judge/counting.ts';
import { laying } from '../judge/laying.ts';
import { pens } from '../judge/paper/pens.ts';
import { recorded } from '../judge/paper/recorded.ts';
import { readRow, rowsWritten } from '../judge/paper/rows-written.ts';
import { productLine } from '../judge/reading.ts';
import type { Findings, Scene } from '../judge/scene.ts';
import { settling } from '../judge/settling.ts';
import { sliding } from '../judge/sliding.ts';
import type { StageRules } from '../judge/stage.ts';
import { tiles } from '../judge/tiles.ts';
import type { Suggestion } from '../judge/work.ts';
import { LINES } from '../mat/sheet.ts';
import { nextBegin, nextInLine } from './line-moves.ts';
import { nextWithBars, pointOfBars } from './with-bars.ts';

/** The row is written as it lies; one that makes nothing is left out. */
function nextRecord(scene: Scene, _findings: Findings, row: number): Suggestion | null {
  if (scene.plan.up.length === 1) return null;
  const reading = readRow(recorded, scene, { at: 'row', row }, row);
  if (reading.spec.columns.needed === 0 && reading.faults.length === 0) return null;
  const line = LINES[reading.spec.line]!;
  return nextBegin(scene, row) ?? nextInLine(scene, reading, { line, carries: null, row });
}

/** As the bars, each partial product written instead of said. */
export const record: StageRules = {
  id: 'record',
  aspects: [
    pens,
    tiles,
    laying,
    counting,
    rowsWritten(recorded),
    sliding,
    settling,
    productLine,
    pointOfBars,
  ],
  next: nextWithBars(nextRecord),
};
