import type { RefusalCode } from '../vocabulary.ts';
import type { ActionOf } from './action.ts';
import { isSameSquare, type Square } from './geometry.ts';
import { EMPTY_PILE, type Lying, type Pile, pileValue } from './position.ts';

const TEN = 9;

export function pileAt({ piles }: Pick<Lying<unknown>, 'piles'>, square: Square): Pile | undefined {
  return piles[square[0]]?.[square[1]];
}

function withPile<P>(position: Lying<P>, square: Square, pile: Pile): Lying<P> {
  const rows = position.piles.slice();
  const row = rows[square[0]]!.slice();
  row[square[1]] = pile;
  rows[square[0]] = row;
  const { tiles, paper, said, finished } = position;
  return { tiles, piles: rows, paper, said, finished };
}

/** Two piles at once: of a row that both lie in one copy is enough. */
function withPiles<P>(
  position: Lying<P>,
  square: Square,
  pile: Pile,
  other: Square,
  there: Pile,
): Lying<P> {
  const after = withPile(position, square, pile);
  const rows = after.piles as (readonly Pile[])[];
  const row = other[0] === square[0] ? (rows[other[0]] as Pile[]) : rows[other[0]]!.slice();
  row[other[1]] = there;
  rows[other[0]] = row;
  return after;
}

function changed({ bars }: Pile, kind: number, by: number): Pile {
  const copy = bars.slice();
  copy[kind - 1]! += by;
  return { bars: copy };
}

/** Bars of one kind by 10 × kind + count, and what is laid for a total: most piles are such, so each is made once. */
const ALONE = Array.from({ length: 100 }, (_, key) =>
  key < 10 ? EMPTY_PILE : changed(EMPTY_PILE, Math.floor(key / 10), key % 10),
);
const FOR_TOTAL = Array.from({ length: 100 }, (_, total) => madeFor(total));

/** A ten-bar for each ten and one bar for the rest. */
function madeFor(total: number): Pile {
  if (total === 0) return EMPTY_PILE;
  const bars = EMPTY_PILE.bars.slice();
  bars[TEN] = Math.floor(total / 10);
  if (total % 10 > 0) bars[(total % 10) - 1] = 1;
  return { bars };
}

function laidOn(pile: Pile, kind: number, count: number): Pile {
  if (pile === EMPTY_PILE && kind < 10 && count < 10) return ALONE[10 * kind + count]!;
  return changed(pile, kind, count);
}

function withoutTens(pile: Pile, tens: number): Pile {
  const value = pileValue(pile);
  return pile === FOR_TOTAL[value] ? FOR_TOTAL[value - 10 * tens]! : changed(pile, 10, -tens);
}

export function layBars<P>(
  position: Lying<P>,
  action: ActionOf<'layBars'>,
): Lying<P> | RefusalCode {
  const pile = pileAt(position, action.square);
  if (pile === undefined) return 'offTheMat';
  return withPile(position, action.square, laidOn(pile, action.kind, action.count));
}

export function liftBars<P>(
  position: Lying<P>,
  action: ActionOf<'liftBars'>,
): Lying<P> | RefusalCode {
  const pile = pileAt(position, action.square);
  if (pile === undefined) return 'offTheMat';
  if (pile.bars[action.kind - 1]! < action.count) return 'notEnoughBars';
  return withPile(position, action.square, changed(pile, action.kind, -action.count));
}

/** The total that was said is laid, right or wrong. */
export function count<P>(position: Lying<P>, action: ActionOf<'count'>): Lying<P> | RefusalCode {
  const pile = pileAt(position, action.square);
  if (pile === undefined) return 'offTheMat';
  if (pileValue(pile) === 0) return 'emptyPile';
  const { square, total } = action;
  return withPile(position, square, FOR_TOTAL[total] ?? madeFor(total));
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
  return withPile(position, action.square, { bars });
}

export function exchange<P>(
  position: Lying<P>,
  action: ActionOf<'exchange'>,
): Lying<P> | RefusalCode {
  const pile = pileAt(position, action.from);
  const target = pileAt(position, action.to);
  if (pile === undefined || target === undefined) return 'offTheMat';
  if (pile.bars[TEN]! < action.tens) return 'notEnoughBars';
  const left = withoutTens(pile, action.tens);
  if (isSameSquare(action.from, action.to))
    return withPile(position, action.from, laidOn(left, 1, action.ones));
  const given = laidOn(target, 1, action.ones);
  return withPiles(position, action.from, left, action.to, given);
}

function together(some: Pile, others: Pile): Pile {
  if (some === EMPTY_PILE) return others;
  const bars = some.bars.slice();
  for (let kind = 0; kind < bars.length; kind += 1) bars[kind]! += others.bars[kind]!;
  return { bars };
}

export function slide<P>(position: Lying<P>, action: ActionOf<'slide'>): Lying<P> | RefusalCode {
  const pile = pileAt(position, action.from);
  const target = pileAt(position, action.to);
  if (pile === undefined || target === undefined) return 'offTheMat';
  if (pileValue(pile) === 0) return 'emptyPile';
  if (isSameSquare(action.from, action.to)) return position;
  return withPiles(position, action.from, EMPTY_PILE, action.to, together(target, pile));
}
