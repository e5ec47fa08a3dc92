import type { RefusalCode } from '../vocabulary.ts';
import type { ActionOf } from './action.ts';
import { isSameSquare, type Square } from './geometry.ts';
import { EMPTY_PILE, type Lying, type Pile, pileValue } from './position.ts';

const TEN = 9;

export function pileAt({ piles }: Pick<Lying<unknown>, 'piles'>, square: Square): Pile | undefined {
  return piles[square[0]]?.[square[1]];
}

function withPile<P>(position: Lying<P>, square: Square, bars: readonly number[]): Lying<P> {
  const rows = position.piles.slice();
  const row = rows[square[0]]!.slice();
  row[square[1]] = bars === EMPTY_PILE.bars ? EMPTY_PILE : { bars };
  rows[square[0]] = row;
  const { tiles, paper, said, finished } = position;
  return { tiles, piles: rows, paper, said, finished };
}

/** Two piles at once: of a row that both lie in one copy is enough. */
function withPiles<P>(
  position: Lying<P>,
  square: Square,
  bars: readonly number[],
  other: Square,
  there: readonly number[],
): Lying<P> {
  const after = withPile(position, square, bars);
  const rows = after.piles as (readonly Pile[])[];
  const row = other[0] === square[0] ? (rows[other[0]] as Pile[]) : rows[other[0]]!.slice();
  row[other[1]] = { bars: there };
  rows[other[0]] = row;
  return after;
}

function changed(bars: readonly number[], kind: number, by: number): number[] {
  const copy = bars.slice();
  copy[kind - 1]! += by;
  return copy;
}

export function layBars<P>(
  position: Lying<P>,
  action: ActionOf<'layBars'>,
): Lying<P> | RefusalCode {
  const pile = pileAt(position, action.square);
  if (pile === undefined) return 'offTheMat';
  return withPile(position, action.square, changed(pile.bars, action.kind, action.count));
}

export function liftBars<P>(
  position: Lying<P>,
  action: ActionOf<'liftBars'>,
): Lying<P> | RefusalCode {
  const pile = pileAt(position, action.square);
  if (pile === undefined) return 'offTheMat';
  if (pile.bars[action.kind - 1]! < action.count) return 'notEnoughBars';
  return withPile(position, action.square, changed(pile.bars, action.kind, -action.count));
}

/** The total that was said is laid, right or wrong: a ten-bar for each ten and one bar for the rest. */
export function count<P>(position: Lying<P>, action: ActionOf<'count'>): Lying<P> | RefusalCode {
  const pile = pileAt(position, action.square);
  if (pile === undefined) return 'offTheMat';
  if (pileValue(pile) === 0) return 'emptyPile';
  const bars = EMPTY_PILE.bars.slice();
  bars[TEN] = Math.floor(action.total / 10);
  if (action.total % 10 > 0) bars[(action.total % 10) - 1] = 1;
  return withPile(position, action.square, bars);
}

export function makeTen<P>(
  position: Lying<P>,
  action: ActionOf<'makeTen'>,
): Lying<P> | RefusalCode {
  const pile = pileAt(position, action.square);
  if (pile === undefined) return 'offTheMat';
  const bars = pile.bars.slice();
  let beads = 0;
  for (const kind of action.bars) {
    bars[kind - 1]! -= 1;
    if (bars[kind - 1]! < 0) return 'notEnoughBars';
    beads += kind;
  }
  if (action.split !== undefined) {
    const { kind, take } = action.split;
    if (!action.bars.includes(kind)) return 'notEnoughBars';
    bars[kind - take - 1]! += 1;
    beads -= kind - take;
  }
  if (beads !== 10) return 'notTen';
  bars[TEN]! += 1;
  return withPile(position, action.square, bars);
}

export function exchange<P>(
  position: Lying<P>,
  action: ActionOf<'exchange'>,
): Lying<P> | RefusalCode {
  const pile = pileAt(position, action.from);
  const target = pileAt(position, action.to);
  if (pile === undefined || target === undefined) return 'offTheMat';
  if (pile.bars[TEN]! < action.tens) return 'notEnoughBars';
  const left = changed(pile.bars, 10, -action.tens);
  if (isSameSquare(action.from, action.to))
    return withPile(position, action.from, changed(left, 1, action.ones));
  const given = changed(target.bars, 1, action.ones);
  return withPiles(position, action.from, left, action.to, given);
}

export function slide<P>(position: Lying<P>, action: ActionOf<'slide'>): Lying<P> | RefusalCode {
  const pile = pileAt(position, action.from);
  const target = pileAt(position, action.to);
  if (pile === undefined || target === undefined) return 'offTheMat';
  if (pileValue(pile) === 0) return 'emptyPile';
  if (pile === target) return position;
  const merged = target.bars.map((bars, index) => bars + pile.bars[index]!);
  return withPiles(position, action.from, EMPTY_PILE.bars, action.to, merged);
}
