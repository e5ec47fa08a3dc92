import { pileValue } from '../mat/position.ts';
import { countedStep, uncounted } from './counting.ts';
import { evenHalves, noteExchange } from './exchanging.ts';
import { debtsOf, finding, halfAt, isOver, settledStep, squareAt } from './ledger.ts';
import { reading } from './product.ts';
import type { Aspect, Finding, Moment, Scene } from './scene.ts';
import { leftAbove } from './sliding.ts';

/** The findings of `settled`, and at the finish what piles left lying make missing in any step. */
function assess(scene: Scene, moment: Moment, findings: Finding[]): void {
  const { plan, ledger } = scene;
  const over = isOver(moment);
  // The finish of a row asks only for exchanges that were wrong or are half made.
  if (moment.at === 'row' && ledger.debts.length + ledger.halves.length === 0) return;
  const own = reading(scene);
  for (let index = 0; index < plan.product.length; index += 1) {
    const step = settledStep(plan, index);
    const half = halfAt(ledger, index);
    const follows = (own.bottom[index] ?? 0) !== plan.product[index];
    findings[step] = finding(over || own.ready > index ? 'right' : 'none', follows);
    if (debtsOf(scene, step).length > 0) findings[step] = finding('wrong', false);
    else if (half !== undefined) {
      const asked = over || (moment.at === 'row' && (half.byRow[moment.row] ?? 0) !== 0);
      findings[step] = finding(asked ? 'wrong' : 'short', false, half.left, 0);
    }
  }
  beyond(scene, findings, over);
  if (over) pilesLeft(scene, findings);
}

/** Halves and debts beyond the product's places belong to the highest place. */
function beyond(scene: Scene, findings: Finding[], over: boolean): void {
  if (!over) return;
  for (const { place } of scene.ledger.halves) {
    if (place >= scene.plan.product.length)
      findings[settledStep(scene.plan, place)] = finding('wrong', false);
  }
}

function pilesLeft(scene: Scene, findings: Finding[]): void {
  const { plan, position, ledger } = scene;
  for (let row = 0; row < plan.rows; row += 1)
    for (let column = 0; column < plan.columns; column += 1) {
      const value = pileValue(position.piles[row]![column]!);
      if (value === 0) continue;
      // At the mat's left edge a slip may leave no square to slide or exchange to: nothing more can be asked.
      const stuck = column === plan.columns - 1;
      if (row > 0 && !stuck)
        missing(
          findings,
          leftAbove(scene, squareAt(plan, row * plan.columns + column)),
          row + column,
        );
      if (value < 10 || stuck) continue;
      const pair = uncounted(scene, ledger.heaps[row * plan.columns + column]!)[0];
      const step = pair === undefined ? settledStep(plan, row + column) : countedStep(plan, pair);
      missing(findings, step, value);
    }
}

function missing(findings: Finding[], step: number, given: number): void {
  if (findings[step]?.grade !== 'wrong') findings[step] = finding('short', false, given, 0);
}

/** Every place ends with fewer than ten: ten of a place are exchanged for one of the next. */
export const settling: Aspect = {
  steps: (plan) =>
    plan.product.map((_, index) => ({
      id: `settled:${plan.problem.mat.origin + index}`,
      skill: 'exchanging' as const,
    })),
  notes: { exchange: noteExchange },
  latch: (scene, moment) => (moment.at === 'now' ? scene.ledger : evenHalves(scene)),
  assess,
};
