import { pointWith } from '../judge/point.ts';
import { zerosLeftOut } from '../judge/reading.ts';
import type { Findings, Scene } from '../judge/scene.ts';
import type { StageRules } from '../judge/stage.ts';
import type { Suggestion } from '../judge/work.ts';
import {
  nextDigit,
  nextLaying,
  nextProductFinish,
  nextRowFinish,
  nextSettling,
  nextSlide,
} from './bar-moves.ts';
import { nextMend } from './mending.ts';
import { nextPoint } from './point-moves.ts';
import { nextTile } from './tile-moves.ts';

/** What is done with a row once it lies counted and exchanged; null: nothing more. */
type Report = (scene: Scene, findings: Findings, row: number) => Suggestion | null;

/** Row by row from the units: lay, count and exchange, report; then all rows down, settle, read the product. */
export function nextWithBars(
  report: Report,
  lay: (scene: Scene, row: number) => Suggestion | null = nextLaying,
  mend: (scene: Scene) => Suggestion | null = nextMend,
): StageRules['next'] {
  return (scene, findings) =>
    nextTile(scene) ??
    mend(scene) ??
    nextRow(scene, findings, report, lay) ??
    nextSlide(scene) ??
    nextSettling(scene, 0) ??
    nextDigit(scene, findings) ??
    nextPoint(scene, findings) ??
    nextProductFinish(scene);
}

function nextRow(
  scene: Scene,
  findings: Findings,
  report: Report,
  lay: (scene: Scene, row: number) => Suggestion | null,
): Suggestion | null {
  for (let row = 0; row < scene.plan.up.length; row += 1) {
    const untouched = (scene.ledger.disturbed & (1 << row)) === 0;
    const move =
      lay(scene, row) ??
      (untouched ? nextSettling(scene, row) : null) ??
      report(scene, findings, row) ??
      nextRowFinish(scene, row);
    if (move !== null) return move;
  }
  return null;
}

/** The point beside a product that is read from the mat. */
export const pointOfBars = pointWith((scene) => [0, zerosLeftOut(scene)]);
