import { believed } from '../../pupils/beliefs.ts';
import type { DoneWork } from '../done.ts';
import { type EvidencePart, oneGroup } from './evidence.ts';

/** The first point set in the product. */
export function pointEvidence(work: DoneWork): EvidencePart {
  const { multiplicand, multiplier, mat } = work.problem;
  const set = work.log.find(({ action }) => action.do === 'point' && action.on === 'product');
  const given = set?.action.do === 'point' ? set.action.places : null;
  if (mat.origin === 0 || given === null) return oneGroup([], () => []);
  const digits = Object.entries(work.position.paper.lines.product ?? {});
  const written = digits
    .sort(([one], [other]) => Number(one) - Number(other))
    .map(([, digit]) => digit);
  const at = { places: [-multiplicand.lowest, -multiplier.lowest] as const, written };
  const most = mat.rows + mat.columns - 1;
  return oneGroup(['point'], (beliefs) => {
    const meant = believed(beliefs, 'point', at, -mat.origin);
    const expected = Math.min(most, Math.max(0, meant));
    return [{ key: 0, step: 'point', given, expected, among: 10 }];
  });
}
