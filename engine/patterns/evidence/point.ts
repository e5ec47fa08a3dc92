import { type Beliefs, believed } from '../../pupils/beliefs.ts';
import type { DoneWork } from '../done.ts';
import type { Expectation } from './evidence.ts';

/** The first point set in the product. */
export function expectPoint(work: DoneWork, beliefs: Beliefs): Expectation[] {
  const { multiplicand, multiplier, mat } = work.problem;
  if (mat.origin === 0) return [];
  const set = work.log.find(({ action }) => action.do === 'point' && action.on === 'product');
  if (set?.action.do !== 'point') return [];
  const digits = Object.entries(work.position.paper.lines.product ?? {});
  const written = digits
    .sort(([one], [other]) => Number(one) - Number(other))
    .map(([, digit]) => digit);
  const at = { places: [-multiplicand.lowest, -multiplier.lowest] as const, written };
  const meant = believed(beliefs, 'point', at, -mat.origin);
  const most = mat.rows + mat.columns - 1;
  const expected = Math.min(most, Math.max(0, meant));
  return [{ key: 'point', step: 'point', given: set.action.places, expected, among: 10 }];
}
