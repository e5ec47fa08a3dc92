import type { Desk } from '../mat/desk.ts';
import type { Square } from '../mat/geometry.ts';
import { withDebts, withHalves, withPlots } from './changes.ts';
import { amountAt, at, ownDue, plotWith, replaced, squareAt } from './ledger.ts';
import type { Debt, Ledger, Plan, Plot } from './scene.ts';

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
  const half = ledger.halves[place - 1];
  return owed || (half !== undefined && half.left >= over);
}

/**
 * After bars were laid or lifted: if what lies beside the due pays a debt whole, both are gone.
 * Pairs still being laid for the first time pay nothing.
 */
export function settleByBars(
  plan: Plan,
  position: Desk,
  ledger: Ledger,
  { act, charged }: { readonly act: number; readonly charged: (place: number) => boolean },
): Ledger {
  if (ledger.debts.length === 0 && !anyHalf(ledger)) return ledger;
  const gaps = gapsOf(plan, position, ledger);
  if (gaps.length === 0) return ledger;
  return (
    payDebt(plan, ledger, gaps, act) ?? payHalf(plan, ledger, gaps, { act, charged }) ?? ledger
  );
}

export function anyHalf({ halves }: Ledger): boolean {
  for (const _ in halves) return true;
  return false;
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

/** A half is made up by bars only once the mat has answered: until then its other half may still come. */
function payHalf(
  plan: Plan,
  ledger: Ledger,
  gaps: readonly Gap[],
  { act, charged }: { readonly act: number; readonly charged: (place: number) => boolean },
): Ledger | null {
  for (const gap of gaps) {
    const place = placeAt(plan, gap.index);
    for (const [from, half] of Object.entries(ledger.halves)) {
      const ones = place === Number(from) + 1 && gap.beads === half.left;
      const tens = place === Number(from) && gap.beads === 10 * half.left;
      if ((!ones && !tens) || !charged(Number(from))) continue;
      const { [Number(from)]: _made, ...halves } = ledger.halves;
      return evened(plan, withHalves(ledger, halves), [gap], act);
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
  return plotWith(plot, [...plot.lays, lay], plot.laid + beads, plot.right);
}

/**
 * More bars of the same place may mend a laying whose pile has moved on: too few there and as many
 * too many here even each other out, unless the pair lies empty (then the bars are on a wrong square).
 */
export function evenOutDiagonal(
  plan: Plan,
  position: Desk,
  ledger: Ledger,
  square: Square,
  { act, charged }: { readonly act: number; readonly charged: (pair: Square) => boolean },
): Ledger {
  const here = at(plan, square);
  const beads = ledger.plots[here]!.laid - (ownDue(position, square) ?? 0);
  if (beads === 0) return ledger;
  for (let row = 0; row < plan.rows; row += 1) {
    const column = square[0] + square[1] - row;
    if (row === square[0] || column < 0 || column >= plan.columns) continue;
    const there = at(plan, [row, column]);
    const plot = ledger.plots[there]!;
    const due = ownDue(position, [row, column]) ?? 0;
    if (plot.laid === 0 || plot.laid === plot.right || plot.laid - due !== -beads) continue;
    // A pair that is still being laid is no mistake to be mended.
    const moved = !ledger.heaps[there]!.pairs.includes(there);
    const mends = beads > 0 ? moved || charged([row, column]) : ledger.plots[here]!.right !== null;
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
