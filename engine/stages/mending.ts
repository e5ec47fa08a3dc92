import { at, ownDue, squareAt } from '../judge/ledger.ts';
import type { Debt, Scene } from '../judge/scene.ts';
import type { Suggestion } from '../judge/work.ts';
import type { Square } from '../mat/geometry.ts';
import { pileValue } from '../mat/position.ts';
import { exchange, layBars, liftBars, slide, undo } from './captions.ts';

/**
 * How a child may mend what went wrong with bars: take the last action back, slide back, or lay and lift
 * until the mat holds what is due. null: nothing to mend, or nothing that the mat still allows to mend.
 */
export function nextMend(scene: Scene): Suggestion | null {
  const { debts, plots } = scene.ledger;
  if (debts.some((debt) => debt.act === scene.lastAct)) return undo();
  for (const debt of debts) {
    const move = slideBack(scene, debt);
    if (move !== null) return move;
  }
  const payment = payByBars(scene);
  if (payment !== null) return payment;
  const half = halfMove(scene);
  if (half !== null) return half;
  for (const [index, plot] of plots.entries()) {
    const square = squareAt(scene.plan, index);
    const gap = gapAt(scene, square);
    if (gap === 0 || plot.laid === 0 || paysThere(debts, square)) continue;
    if (gap > 0 && plot.lays.some(({ act, count }) => act === scene.lastAct && count > 0))
      return undo();
    const move = shift(scene, square, -gap);
    if (move !== null) return move;
  }
  return null;
}

/** What differs on a place that a debt owes may be what pays it: evening it out would open the debt again, for ever. */
function paysThere(debts: readonly Debt[], [row, column]: Square): boolean {
  return debts.some(({ owed }) => owed.some(({ at: place }) => place === row + column));
}

function pile(scene: Scene, [row, column]: Square): number {
  const found = scene.position.piles[row]?.[column];
  return found === undefined ? 0 : pileValue(found);
}

function slideBack(scene: Scene, debt: Debt): Suggestion | null {
  if (debt.by !== 'slide') return null;
  const back = debt.owed.find(({ beads }) => beads > 0)!;
  const unmerged = pile(scene, debt.square) === back.beads;
  const target: Square = [0, back.at];
  return unmerged && back.at < scene.plan.columns ? slide(scene, debt.square, target) : null;
}

/** Debts of one place are paid together: paid one by one, each would undo the other's payment. */
function payByBars(scene: Scene): Suggestion | null {
  const owed = scene.ledger.debts.flatMap((debt) =>
    debt.owed.map((share) => ({ ...share, square: debt.square })),
  );
  for (const place of new Set(owed.map((share) => share.at))) {
    const shares = owed.filter((share) => share.at === place);
    const beads = shares.reduce((sum, share) => sum + share.beads, 0);
    const move = payAt(scene, shares[0]!.square, place, beads);
    if (move != null) return move;
  }
  return null;
}

/** null: paid already; undefined: no square of the place holds enough to lift. The debt's own square comes first. */
function payAt(
  scene: Scene,
  own: Square,
  place: number,
  beads: number,
): Suggestion | null | undefined {
  for (const square of squaresOf(scene, own, place)) {
    const left = beads - gapAt(scene, square);
    if (left === 0) return null;
    if (left > 0 || pile(scene, square) >= -left) return shift(scene, square, left);
  }
  return undefined;
}

function gapAt({ plan, position, ledger }: Scene, square: Square): number {
  return ledger.plots[at(plan, square)]!.laid - (ownDue(position, square) ?? 0);
}

function squaresOf(scene: Scene, own: Square, place: number): Square[] {
  const { rows, columns } = scene.plan;
  const squares: Square[] = own[0] + own[1] === place ? [own] : [];
  for (let row = 0; row < rows; row += 1) {
    if (place - row >= 0 && place - row < columns) squares.push([row, place - row]);
  }
  return squares;
}

/** Changes what lies on a square by so many beads, a bar at a time where the bars do not match. */
function shift(scene: Scene, square: Square, beads: number): Suggestion | null {
  if (beads > 0) return layMore(scene, square, beads);
  const { bars } = scene.position.piles[square[0]]![square[1]]!;
  for (let kind = 10; kind >= 1; kind -= 1) {
    const fits = Math.min(bars[kind - 1]!, Math.floor(-beads / kind));
    if (fits > 0) return liftBars(scene, { do: 'liftBars', square, kind, count: fits });
  }
  const larger = bars.findIndex((count, index) => count > 0 && index + 1 > -beads);
  if (larger < 0) return null;
  return liftBars(scene, { do: 'liftBars', square, kind: larger + 1, count: 1 });
}

function layMore(scene: Scene, square: Square, beads: number): Suggestion {
  const own = scene.position.tiles.bottom[square[1]] ?? 0;
  const kind = own > 0 && beads % own === 0 ? own : beads < 10 ? beads : 1;
  const count = Math.min(99, Math.floor(beads / kind));
  return layBars(scene, { do: 'layBars', square, kind, count });
}

function halfMove(scene: Scene): Suggestion | null {
  for (const { left, from, to } of scene.ledger.halves) {
    const next = to[0] + to[1] === from[0] + from[1] + 1 ? to : ([from[0], from[1] + 1] as const);
    if (next[1] >= scene.plan.columns) continue;
    if (left > 0) return exchange(scene, { do: 'exchange', from, tens: 0, to: next, ones: left });
    if (scene.position.piles[from[0]]![from[1]]!.bars[9]! >= -left) {
      return exchange(scene, { do: 'exchange', from, tens: -left, to: next, ones: 0 });
    }
  }
  return null;
}
