import type { Problem } from '../../problem.ts';
import { tilesMeant } from '../../pupils/tiles.ts';
import { EDGES, type Edge } from '../../vocabulary.ts';
import { BLANK } from '../by-list.ts';
import type { DoneWork } from '../done.ts';
import { DIGITS, type Expectation, type Sighting, sighting, type Topic } from './evidence.ts';
import { type FirstDone, isOver } from './first-done.ts';

/** An edge as the child first laid it; null: nothing was ever laid there. */
interface EdgeSeen {
  readonly edge: Edge;
  readonly first: readonly (number | null)[];
  readonly over: boolean;
}

const TILES: Topic<EdgeSeen> = {
  bears: ['build'],
  expect(problem, { edge, first, over }, beliefs) {
    const meant = tilesMeant(problem, beliefs, edge);
    const found: Expectation[] = [];
    for (const [index, given] of first.entries()) {
      const expected = meant[index] ?? null;
      if (given === null && (expected === null || !over)) continue;
      const step = `tile:${edge}:${Math.min(index, digitsOf(problem, edge) - 1)}`;
      found.push({ key: index, step, given, expected, among: DIGITS });
    }
    return found;
  },
};

/** The first tile laid at each place of both edges. */
export function tilesSeen(work: DoneWork, { tiles }: FirstDone): readonly Sighting[] {
  const over = isOver(work);
  return EDGES.map((edge, at) => {
    const first = tiles[edge];
    const key = [at, over ? 1 : 0];
    spellTiles(key, first);
    return sighting(TILES, key, { edge, first, over });
  });
}

/** Spells out an edge of a mat, which has the same places for all who work the problem. */
export function spellTiles(key: number[], tiles: readonly (number | null)[]): void {
  for (const tile of tiles) key.push(tile ?? BLANK);
}

function digitsOf(problem: Problem, edge: Edge): number {
  return (edge === 'bottom' ? problem.multiplicand : problem.multiplier).digits.length;
}
