import { tilesMeant } from '../../pupils/tiles.ts';
import { EDGES, type Edge } from '../../vocabulary.ts';
import type { DoneWork } from '../done.ts';
import { DIGITS, type EvidencePart, type Expectation, oneGroup, ROOM } from './evidence.ts';
import { isOver } from './first-written.ts';

/** The first tile laid at each place of both edges. */
export function tilesEvidence(work: DoneWork): EvidencePart {
  const first = new Map<string, number>();
  for (const { action, refused } of work.log) {
    if (refused !== undefined || action.do !== 'layTile') continue;
    const key = `${action.edge}:${action.index}`;
    if (!first.has(key)) first.set(key, action.digit);
  }
  const edges = EDGES.map((edge) =>
    work.position.tiles[edge].map((_, index) => ({
      given: first.get(`${edge}:${index}`) ?? null,
      step: `tile:${edge}:${Math.min(index, digitsOf(work, edge) - 1)}`,
    })),
  );
  const over = isOver(work);
  return oneGroup(['build'], (beliefs) =>
    EDGES.flatMap((edge, at) => {
      const meant = tilesMeant(work.problem, beliefs, edge);
      return edges[at]!.flatMap(({ given, step }, index): Expectation[] => {
        const expected = meant[index] ?? null;
        if (given === null && (expected === null || !over)) return [];
        return [{ key: at * ROOM + index, step, given, expected, among: DIGITS }];
      });
    }),
  );
}

function digitsOf({ problem }: DoneWork, edge: Edge): number {
  return (edge === 'bottom' ? problem.multiplicand : problem.multiplier).digits.length;
}
