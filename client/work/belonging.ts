import type { Action, Square, Work } from '../../engine/child.ts';
import { sameSquare } from '../mat/geometry.ts';

const PASSED_OVER = ['check', 'hint', 'finish'];

/** The actions that still stand: an undo takes back the last one that moved something. */
const standing = ({ log }: Work): Action[] => {
  const stand: Action[] = [];
  for (const { action, refused } of log) {
    if (refused !== undefined || PASSED_OVER.includes(action.do)) continue;
    if (action.do === 'undo') stand.pop();
    else stand.push(action);
  }
  return stand;
};

/** The pair of a fact that bars of this kind on this square were laid for: `likely` if it has some there, else the last one; null: laid for none. */
export const ownerOf = (
  work: Work,
  square: Square,
  kind: number,
  likely: Square,
): Square | null => {
  const left = new Map<string, number>();
  for (const action of standing(work)) {
    if (action.do !== 'layBars' && action.do !== 'liftBars') continue;
    if (action.of === undefined || action.kind !== kind || !sameSquare(action.square, square))
      continue;
    const by = action.do === 'layBars' ? action.count : -action.count;
    const key = action.of.join(':');
    left.set(key, (left.get(key) ?? 0) + by);
  }
  const owners = [...left].filter(([, count]) => count > 0).map(([key]) => key);
  const key = owners.includes(likely.join(':')) ? likely.join(':') : owners.at(-1);
  if (key === undefined) return null;
  const [row = 0, column = 0] = key.split(':').map(Number);
  return [row, column];
};
