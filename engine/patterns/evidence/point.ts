import { believed } from '../../pupils/beliefs.ts';
import type { DoneWork } from '../done.ts';
import { type Strand, singly } from './evidence.ts';

/** The first point set in the product, and the product's digits as they stand. */
interface PointSeen {
  readonly given: number;
  readonly written: readonly number[];
}

const POINT = singly<PointSeen>(['point'], {
  among: 10,
  step: () => 'point',
  given: ({ given }) => given,
  due({ multiplicand, multiplier, mat }, { written }, beliefs) {
    const at = { places: [-multiplicand.lowest, -multiplier.lowest] as const, written };
    const meant = believed(beliefs, 'point', at, -mat.origin);
    return Math.min(mat.rows + mat.columns - 1, Math.max(0, meant));
  },
});

export function pointSeen({ problem, position, log }: DoneWork): Strand {
  if (problem.mat.origin === 0) return [];
  const set = log.find(({ action }) => action.do === 'point' && action.on === 'product');
  if (set?.action.do !== 'point') return [];
  const given = set.action.places;
  const written = Object.entries(position.paper.lines.product ?? {})
    .sort(([one], [other]) => Number(one) - Number(other))
    .map(([, digit]) => digit);
  return { topic: POINT, seen: [{ given, written }] };
}
