import type { RefusalCode } from '../vocabulary.ts';
import type { ActionOf } from './action.ts';
import type { Square } from './geometry.ts';
import { EMPTY_PILE, type Pile, type Position, pileValue } from './position.ts';

const TEN = 9;

export function pileAt(position: Position, square: Square): Pile | undefined {
  return position.piles[square[0]]?.[square[1]];
}

function withPile(position: Position, [row, column]: Square, bars: readonly number[]): Position {
  const piles = position.piles.slice();
  const changed = piles[row]!.slice();
  changed[column] = { bars };
  piles[row] = changed;
  return { ...position, piles };
}

function changed(bars: readonly number[], kind: number, by: number): number[] {
  const copy = bars.slice();
  copy[kind - 1]! += by;
  return copy;
}

export function layBars(position: Position, action: ActionOf<'layBars'>): Position | RefusalCode {
  const pile = pileAt(position, action.square);
  if (pile === undefined) return 'offTheMat';
  return withPile(position, action.square, changed(pile.bars, action.kind, action.count));
}

export function liftBars(position: Position, action: ActionOf<'liftBars'>): Position | RefusalCode {
  const pile = pileAt(position, action.square);
  if (pile === undefined) return 'offTheMat';
  if (pile.bars[action.kind - 1]! < action.count) return 'notEnoughBars';
  return withPile(position, action.square, changed(pile.bars, action.kind, -action.count));
}

/** The total that was said is laid, right or wrong: a ten-bar for each ten and one bar for the rest. */
export function count(position: Position, action: ActionOf<'count'>): Position | RefusalCode {
  const pile = pileAt(position, action.square);
  if (pile === undefined) return 'offTheMat';
  if (pileValue(pile) === 0) return 'emptyPile';
  const bars = EMPTY_PILE.bars.slice();
  bars[TEN] = Math.floor(action.total / 10);
  if (action.total % 10 > 0) bars[(action.total % 10) - 1] = 1;
  return withPile(position, action.square, bars);
}

export function makeTen(position: Position, action: ActionOf<'makeTen'>): Position | RefusalCode {
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

export function exchange(position: Position, action: ActionOf<'exchange'>): Position | RefusalCode {
  const pile = pileAt(position, action.from);
  if (pile === undefined || pileAt(position, action.to) === undefined) return 'offTheMat';
  if (pile.bars[TEN]! < action.tens) return 'notEnoughBars';
  const taken = withPile(position, action.from, changed(pile.bars, 10, -action.tens));
  return withPile(taken, action.to, changed(pileAt(taken, action.to)!.bars, 1, action.ones));
}

export function slide(position: Position, action: ActionOf<'slide'>): Position | RefusalCode {
  const pile = pileAt(position, action.from);
  const target = pileAt(position, action.to);
  if (pile === undefined || target === undefined) return 'offTheMat';
  if (pileValue(pile) === 0) return 'emptyPile';
  if (pile === target) return position;
  const merged = target.bars.map((bars, index) => bars + pile.bars[index]!);
  return withPile(withPile(position, action.from, EMPTY_PILE.bars), action.to, merged);
}
