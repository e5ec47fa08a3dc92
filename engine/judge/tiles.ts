import type { ActionOf } from '../mat/action.ts';
import { EDGES, type Edge } from '../vocabulary.ts';
import { finding, RIGHT_DIGITS } from './ledger.ts';
import type { Aspect, Finding, Note, Plan, Scene } from './scene.ts';

function digitsOn(plan: Pick<Plan, 'across' | 'up'>, edge: Edge): readonly number[] {
  return edge === 'bottom' ? plan.across : plan.up;
}

/** The tile's own step; for a tile beyond the number the nearest of its edge. */
export function tileStep(plan: Plan, edge: Edge, index: number): number {
  return plan.tables[edge][Math.min(index, digitsOn(plan, edge).length - 1)] ?? -1;
}

const note: Note<ActionOf<'layTile'> | ActionOf<'liftTile'>> = (before, _after, action) => {
  const { plan, ledger } = before;
  const due = digitsOn(plan, action.edge)[action.index] ?? null;
  const given = action.do === 'layTile' ? action.digit : null;
  const step = tileStep(plan, action.edge, action.index);
  if (given === null) return { ledger, remark: { step, verdict: 'neutral', given, due } };
  return { ledger, remark: { step, verdict: given === due ? 'right' : 'wrong', given, due } };
};

function assessEdge({ plan, position }: Scene, edge: Edge, findings: Finding[]): void {
  const digits = digitsOn(plan, edge);
  const tiles = position.tiles[edge];
  for (let index = 0; index < digits.length; index += 1) {
    const due = digits[index]!;
    const given = tiles[index] ?? null;
    findings[tileStep(plan, edge, index)] =
      given === due
        ? RIGHT_DIGITS[due]!
        : finding(given === null ? 'none' : 'wrong', false, given, due);
  }
  for (let index = digits.length; index < tiles.length; index += 1) {
    const given = tiles[index] ?? null;
    if (given !== null)
      findings[tileStep(plan, edge, index)] = finding('wrong', false, given, null);
  }
}

/** A tile for every digit, zeros too; a tile too many belongs to the highest of its edge. */
export const tiles: Aspect = {
  steps: (plan) =>
    EDGES.flatMap((edge) =>
      digitsOn(plan, edge).map((_, index) => ({
        id: `tile:${edge}:${index}`,
        skill: 'building' as const,
      })),
    ),
  notes: { layTile: note, liftTile: note },
  assess: (scene, _moment, findings) => {
    for (const edge of EDGES) assessEdge(scene, edge, findings);
  },
};
