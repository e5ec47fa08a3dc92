import type { ActionOf } from '../mat/action.ts';
import { finding, isOver, sceneWith, stepOf } from './ledger.ts';
import type { Aspect, Finding, Moment, Note, Plan, Scene } from './scene.ts';

/** How many zeros at the end of the product the point may leave out, because the child did. */
export type LeftOut = (scene: Scene) => readonly number[];

export function truePlaces(plan: Plan, on: 'multiplicand' | 'multiplier'): number {
  return -plan.problem[on].lowest;
}

function numbersDue({ plan, position }: Scene): number {
  return (['multiplicand', 'multiplier'] as const).reduce(
    (sum, on) => sum + (position.paper.points[on] ?? truePlaces(plan, on)),
    0,
  );
}

function wrongNumber({ plan, position }: Scene): boolean {
  return (['multiplicand', 'multiplier'] as const).some(
    (on) => (position.paper.points[on] ?? truePlaces(plan, on)) !== truePlaces(plan, on),
  );
}

function isDue(scene: Scene, places: number, leftOut: LeftOut): boolean {
  const due = numbersDue(scene);
  return leftOut(scene).some((zeros) => places === due - zeros);
}

/** A single row is the product: its own line may bear the point. */
export function productPoint({ plan, position }: Scene): number | undefined {
  const { points } = position.paper;
  return points['product'] ?? (plan.up.length === 1 ? points['partial:0'] : undefined);
}

function noteWith(leftOut: LeftOut): Note<ActionOf<'point'>> {
  return (before, after, action) => {
    const { ledger, plan } = before;
    const step = stepOf(plan, 'point');
    if (step < 0) return { ledger };
    if (action.on.startsWith('partial:') && plan.up.length > 1) return { ledger };
    const scene = sceneWith(before, after);
    const number = action.on === 'multiplicand' || action.on === 'multiplier' ? action.on : null;
    const due = number === null ? numbersDue(scene) : truePlaces(plan, number);
    const right = number === null ? isDue(scene, action.places, leftOut) : action.places === due;
    const verdict = right ? 'right' : 'wrong';
    return { ledger, remark: { step, verdict, given: action.places, due } };
  };
}

function findingOf(scene: Scene, moment: Moment, leftOut: LeftOut): Finding {
  const due = numbersDue(scene);
  const given = productPoint(scene);
  if (wrongNumber(scene)) return finding('wrong', false, given ?? null, due);
  if (given === undefined) return finding('none', false, null, due);
  if (isDue(scene, given, leftOut)) return finding('right', false, given, due);
  // While the product is being written, its zeros at the end may still be left out: only too many is wrong.
  const early = !isOver(moment) && given < due;
  return finding(early ? 'none' : 'wrong', false, given, due);
}

/** The product's point, when a number has one: as many places as the two numbers together. */
export function pointWith(leftOut: LeftOut): Aspect {
  return {
    steps: (plan) =>
      plan.problem.mat.origin < 0 ? [{ id: 'point', skill: 'point' as const }] : [],
    notes: { point: noteWith(leftOut) },
    assess: (scene, moment, findings) => {
      // The finish of a row asks nothing of the product.
      if (moment.at === 'row') return;
      const step = stepOf(scene.plan, 'point');
      if (step >= 0) findings[step] = findingOf(scene, moment, leftOut);
    },
  };
}
