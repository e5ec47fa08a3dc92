import { stepOf } from '../judge/ledger.ts';
import { truePlaces } from '../judge/point.ts';
import type { Findings, Scene } from '../judge/scene.ts';
import type { Suggestion } from '../judge/work.ts';
import { setPoint } from './captions.ts';

/** The points of the numbers if they were moved, then the product's; `leftOut`: zeros that it leaves out. */
export function nextPoint(
  { plan, position }: Scene,
  findings: Findings,
  leftOut = 0,
): Suggestion | null {
  const step = stepOf(plan, 'point');
  if (step < 0 || findings.at(step)!.grade === 'right') return null;
  for (const on of ['multiplicand', 'multiplier'] as const) {
    const places = truePlaces(plan, on);
    if ((position.paper.points[on] ?? places) !== places) return setPoint(plan, on, places);
  }
  return setPoint(plan, 'product', -plan.problem.mat.origin - leftOut);
}
