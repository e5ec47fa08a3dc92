import type { Scene } from '../judge/scene.ts';
import type { Suggestion } from '../judge/work.ts';
import { EDGES } from '../vocabulary.ts';
import { layTile, liftTile } from './captions.ts';

/** The first tile that is not as the numbers have it, units first, the multiplicand before the multiplier. */
export function nextTile({ plan, position }: Scene): Suggestion | null {
  for (const edge of EDGES) {
    const digits = edge === 'bottom' ? plan.across : plan.up;
    for (const [index, tile] of position.tiles[edge].entries()) {
      const digit = digits[index];
      if (digit === undefined && tile !== null) return liftTile({ do: 'liftTile', edge, index });
      if (digit !== undefined && tile !== digit) {
        return layTile(plan, { do: 'layTile', edge, index, digit });
      }
    }
  }
  return null;
}
