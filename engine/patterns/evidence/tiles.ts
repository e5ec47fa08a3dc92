import type { Beliefs } from '../../pupils/beliefs.ts';
import { tilesMeant } from '../../pupils/tiles.ts';
import { EDGES } from '../../vocabulary.ts';
import type { DoneWork } from '../done.ts';
import { DIGITS, type Expectation } from './evidence.ts';
import { isOver } from './first-written.ts';

/** The first tile laid at each place of both edges. */
export function tilesEvidence(work: DoneWork): (beliefs: Beliefs) => Expectation[] {
  const first = new Map<string, number>();
  for (const { action, refused } of work.log) {
    if (refused !== undefined || action.do !== 'layTile') continue;
    const key = `tile:${action.edge}:${action.index}`;
    if (!first.has(key)) first.set(key, action.digit);
  }
  const over = isOver(work);
  return (beliefs) =>
    EDGES.flatMap((edge) => {
      const meant = tilesMeant(work.problem, beliefs, edge);
      const room = work.position.tiles[edge].length;
      return Array.from({ length: room }, (_, index) => index).flatMap((index): Expectation[] => {
        const key = `tile:${edge}:${index}`;
        const given = first.get(key) ?? null;
        const expected = meant[index] ?? null;
        if (given === null && (expected === null || !over)) return [];
        const length = digitsOf(work, edge);
        const step = `tile:${edge}:${Math.min(index, length - 1)}`;
        return [{ key, step, given, expected, among: DIGITS }];
      });
    });
}

function digitsOf({ problem }: DoneWork, edge: 'bottom' | 'right'): number {
  return (edge === 'bottom' ? problem.multiplicand : problem.multiplier).digits.length;
}
