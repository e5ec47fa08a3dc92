import type { Problem } from '../problem.ts';
import { EDGES, type Edge } from '../vocabulary.ts';
import { type Beliefs, believed } from './beliefs.ts';
import type { Hand } from './hand.ts';

/** Digits along both edges, lowest first; null: nothing lies there. */
export type Tiles = Readonly<Record<Edge, readonly (number | null)[]>>;

/** What the beliefs lay along an edge: as far as the edge goes. */
export function tilesMeant(problem: Problem, beliefs: Beliefs, edge: Edge): (number | null)[] {
  const { digits } = edge === 'bottom' ? problem.multiplicand : problem.multiplier;
  const room = edge === 'bottom' ? problem.mat.columns : problem.mat.rows;
  return believed(beliefs, 'build', { edge, digits }, digits).slice(0, room);
}

export function playTiles(problem: Problem, beliefs: Beliefs, hand: Hand): Tiles {
  const lay = (edge: Edge) =>
    tilesMeant(problem, beliefs, edge).map((meant, index) => {
      if (meant === null) return null;
      const digit = hand.digit(meant);
      hand.act({ do: 'layTile', edge, index, digit });
      return digit;
    });
  const [bottom, right] = EDGES.map(lay);
  return { bottom: bottom!, right: right! };
}

/** The digits as they are worked with; an empty square counts as zero. */
export function digitsOn(tiles: readonly (number | null)[]): number[] {
  const length = tiles.findLastIndex((tile) => tile !== null) + 1;
  return tiles.slice(0, length).map((tile) => tile ?? 0);
}
