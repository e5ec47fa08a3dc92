import type { Problem } from '../../problem.ts';
import { tilesMeant } from '../../pupils/tiles.ts';
import { EDGES, type Edge } from '../../vocabulary.ts';
import type { DoneWork } from '../done.ts';
import { DIGITS, type Expectation, ROOM, type Strand, sighting, type Topic } from './evidence.ts';
import { isOver } from './first-written.ts';

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
export function tilesSeen(work: DoneWork): Strand {
  const over = isOver(work);
  const [bottom, right] = EDGES.map((edge) => work.position.tiles[edge].map(() => null)) as [
    (number | null)[],
    (number | null)[],
  ];
  for (const { action, refused } of work.log) {
    if (refused !== undefined || action.do !== 'layTile') continue;
    const edge = action.edge === 'bottom' ? bottom : right;
    edge[action.index] ??= action.digit;
  }
  return EDGES.map((edge, at) => {
    const first = edge === 'bottom' ? bottom : right;
    return sighting(TILES, `${edge}${over}${first}`, { edge, first, over }, at * ROOM);
  });
}

function digitsOf(problem: Problem, edge: Edge): number {
  return (edge === 'bottom' ? problem.multiplicand : problem.multiplier).digits.length;
}
