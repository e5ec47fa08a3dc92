import type { Action, Work } from '../../engine/child.ts';
import type { PwMat } from './mat.ts';
import { barsOf } from './pile-layout.ts';

/** Bars that are seen to travel with a move; more would only be a blur. */
const MOST_SEEN = 5;

/** A slide or an exchange is seen to go from square to square; `work` as it lies after the action. */
export const showTravel = (
  mat: PwMat | null,
  action: Action | undefined,
  { position }: Work,
): void => {
  if (action?.do !== 'slide' && action?.do !== 'exchange') return;
  const [row, column] = action.to;
  const pile = barsOf(position.piles[row]?.[column]?.bars ?? []);
  void mat?.fly(action.from, action.to, action.do === 'exchange' ? [1] : pile.slice(0, MOST_SEEN));
};
