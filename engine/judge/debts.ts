import type { Desk } from '../mat/desk.ts';
import type { Square } from '../mat/geometry.ts';
import { withDebts, withHalves, withPlots } from './changes.ts';
import {
  added,
  amountAt,
  at,
  halfAt,
  laidStep,
  ownDue,
  plotWith,
  replaced,
  settledStep,
  squareAt,
} from './ledger.ts';
import type { Debt, Half, Ledger, Plan, Plot, Scene } from './scene.ts';

/** Takes debts away that a change of the mat's value pays whole: one, or the latest few together. */
export function paid(debts: readonly Debt[], change: bigint): readonly Debt[] | null {
  const single = debts.findIndex((debt) => debt.amount === -change);
  if (single >= 0) return debts.filter((_, index) => index !== single);
  let sum = 0n;
  for (let first = debts.length - 1; first >= 0; first -= 1) {
    sum += debts[first]!.amount;
    if (sum === -change) return debts.slice(0, first);
  }
  return null;
}

interface Gap {
  readonly index: number;
  readonly beads: number;
}

/** Whether bars beyond the due may be the beginning of a payment: then they are no mistake yet. */
export function mayPay(ledger: Ledger, place: number, over: number): boolean {
  const owed = ledger.debts.some((debt) =>
    debt.owed.some(({ at: where, beads }) => where === place && beads >= over),
  );
  const half = halfAt(ledger, place - 1);
  return owed || (half !== undefined && half.left >= over);
}

/**
 * A half is made up by bars only once the mat has answered: until then its other half may still come.
 */
function isAnswered({ plan, charged }: Scene, half: Half): boolean {
  return charged.has(settledStep(plan, half.place));
}

/** Whether anything could be paid by bars that are laid now. */
export function owes(scene: Scene): boolean {
  const { debts, halves } = scene.ledger;
  return debts.length > 0 || (halves.length > 0 && halves.some((half) => isAnswered(scene, half)));
}

/**
 * After bars were laid or lifted: if what lies beside the due pays a debt whole, both are gone.
 * Pairs still being laid for the first time pay nothing.
 */
export function settleByBars(scene: Scene, position: Desk, ledger: Ledger, act: number): Ledger {
  const gaps = gapsOf(scene.plan, position, ledger);
  if (gaps.length === 0) return ledger;
  return payDebt(scene.plan, ledger, gaps, act) ?? payHalf(scene, ledger, gaps, act) ?? ledger;
}

function gapsOf(plan: Plan, position: Desk, ledger: Ledger): Gap[] {
  return ledger.plots.flatMap((plot, index) => {
    const due = ownDue(position, squareAt(plan, index)) ?? 0;
    const beads = plot.laid - due;
    const begun = plot.right !== null || beads > 0 || plot.laid < 0;
    return beads !== 0 && begun && plot.right !== plot.laid ? [{ index, beads }] : [];
  });
}

function placeAt(plan: Plan, index: number): number {
  const [row, column] = squareAt(plan, index);
  return row + column;
}

function payDebt(plan: Plan, ledger: Ledger, gaps: readonly Gap[], act: number): Ledger | null {
  for (const some of [gaps, ...gaps.map((gap) => [gap])]) {
    const change = some.reduce(
      (sum, gap) => sum + amountAt(gap.beads, placeAt(plan, gap.index)),
      0n,
    );
    const near = ledger.debts.filter((debt) =>
      some.every((gap) => debt.owed.some(({ at: where }) => where === placeAt(plan, gap.index))),
    );
    const left = paid(near, change);
    if (left === null) continue;
    const gone = near.filter((debt) => !left.includes(debt));
    const debts = ledger.debts.filter((debt) => !gone.includes(debt));
    return evened(plan, withDebts(ledger, debts), some, act);
  }
  return null;
}

function payHalf(scene: Scene, ledger: Ledger, gaps: readonly Gap[], act: number): Ledger | null {
  for (const gap of gaps) {
    const place = placeAt(scene.plan, gap.index);
    for (const half of ledger.halves) {
      const ones = place === half.place + 1 && gap.beads === half.left;
      const tens = place === half.place && gap.beads === 10 * half.left;
      if ((!ones && !tens) || !isAnswered(scene, half)) continue;
      const halves = ledger.halves.filter((each) => each !== half);
      return evened(scene.plan, withHalves(ledger, halves), [gap], act);
    }
  }
  return null;
}

/** The bars that paid count for the debt from now on, not for their pair. */
function evened(plan: Plan, ledger: Ledger, gaps: readonly Gap[], act: number): Ledger {
  let { plots } = ledger;
  for (const gap of gaps) {
    plots = replaced(
      plots,
      gap.index,
      shifted(plots[gap.index]!, -gap.beads, squareAt(plan, gap.index), act),
    );
  }
  return withPlots(ledger, plots);
}

function shifted(plot: Plot, beads: number, square: Square, act: number): Plot {
  const lay = { act, square, kind: 1, count: beads };
  return plotWith(plot, added(plot.lays, lay), plot.laid + beads, plot.right);
}

/**
 * More bars of the same place may mend a laying whose pile has moved on: too few there and as many
 * too many here even each other out, unless the pair lies empty (then the bars are on a wrong square).
 */
export function evenOutDiagonal(
  { plan, charged }: Scene,
  position: Desk,
  ledger: Ledger,
  square: Square,
  act: number,
): Ledger {
  const here = at(plan, square);
  const beads = ledger.plots[here]!.laid - (ownDue(position, square) ?? 0);
  if (beads === 0) return ledger;
  for (let row = 0; row < plan.rows; row += 1) {
    const column = square[0] + square[1] - row;
    if (row === square[0] || column < 0 || column >= plan.columns) continue;
    const there = row * plan.columns + column;
    const { laid, right } = ledger.plots[there]!;
    if (laid === 0 || laid === right) continue;
    const pair = squareAt(plan, there);
    if (laid - (ownDue(position, pair) ?? 0) !== -beads) continue;
    // A pair that is still being laid is no mistake to be mended.
    const moved = !ledger.heaps[there]!.pairs.includes(there);
    const mends =
      beads > 0 ? moved || charged.has(laidStep(plan, pair)) : ledger.plots[here]!.right !== null;
    if (!mends) continue;
    return evened(
      plan,
      ledger,
      [
        { index: here, beads },
        { index: there, beads: -beads },
      ],
      act,
    );
  }
  return ledger;
}
