import type { ActionOf } from '../mat/action.ts';
import { pileAt } from '../mat/bars.ts';
import type { Square } from '../mat/geometry.ts';
import { pileValue } from '../mat/position.ts';
import { noted, withDebts, withPlots } from './changes.ts';
import { paid } from './debts.ts';
import {
  amountAt,
  at,
  debtsOf,
  finding,
  isOver,
  onlyRow,
  replaced,
  settledStep,
  squareAt,
  trueDue,
} from './ledger.ts';
import type { Aspect, Finding, Heap, Ledger, Moment, Note, Plan, Scene } from './scene.ts';

export function countedStep(plan: Plan, pair: number): number {
  return plan.tables.counted[pair] ?? -1;
}

/** Pairs of the heap that have a step to count and are not counted yet. */
export function uncounted({ plan, ledger }: Scene, heap: Heap): number[] {
  return heap.pairs.filter(
    (pair) => ledger.plots[pair]!.counted === 'no' && countedStep(plan, pair) >= 0,
  );
}

/** The step that a count is for: an uncounted pair, else a counted one, else the place. */
function payerOf(scene: Scene, square: Square): number {
  const { plan, ledger } = scene;
  const heap = ledger.heaps[at(plan, square)]!;
  const pair = uncounted(scene, heap)[0] ?? heap.pairs.find((each) => countedStep(plan, each) >= 0);
  return pair === undefined ? settledStep(plan, square[0] + square[1]) : countedStep(plan, pair);
}

const note: Note<ActionOf<'count'>> = (before, _after, action, act) => {
  const { plan, ledger } = before;
  const { square, total } = action;
  const due = pileValue(pileAt(before.position, square)!);
  const step = payerOf(before, square);
  if (total === due) {
    const verdict = follows(before, square) ? 'follows' : 'right';
    return noted(counted(before, square, 'right'), step, verdict, total, due);
  }
  const place = square[0] + square[1];
  const amount = amountAt(total - due, place);
  const near = ledger.debts.filter((debt) => debt.square[0] + debt.square[1] === place);
  const left = paid(near, amount);
  if (left !== null) {
    const debts = ledger.debts.filter((debt) => !near.includes(debt) || left.includes(debt));
    return noted(withDebts(ledger, debts), step, 'right', total, total);
  }
  const row = onlyRow(ledger.heaps[at(plan, square)]!.rows);
  const early = row >= 0 && (ledger.disturbed & (1 << row)) === 0;
  const owed = [{ at: place, beads: due - total }];
  const debt = { step, by: 'count' as const, act, amount, owed, square, row, early };
  const marked = counted(before, square, 'wrongly');
  return noted(withDebts(marked, [...marked.debts, debt]), step, 'wrong', total, due);
};

/** One count speaks for every pair that travelled in the pile; a wrong one only for those not counted before. */
function counted({ plan, ledger }: Scene, square: Square, how: 'right' | 'wrongly'): Ledger {
  let { plots } = ledger;
  const { pairs } = ledger.heaps[at(plan, square)]!;
  for (let index = 0; index < pairs.length; index += 1) {
    const pair = pairs[index]!;
    const { lays, laid, right, rightLays, counted: before } = plots[pair]!;
    if (before === how || (how === 'wrongly' && before !== 'no')) continue;
    plots = replaced(plots, pair, { lays, laid, right, counted: how, rightLays });
  }
  return plots === ledger.plots ? ledger : withPlots(ledger, plots);
}

function follows({ plan, ledger }: Scene, square: Square): boolean {
  return ledger.heaps[at(plan, square)]!.pairs.some(
    (pair) => ledger.plots[pair]!.laid !== trueDue(plan, squareAt(plan, pair)),
  );
}

function assess(scene: Scene, moment: Moment, findings: Finding[]): void {
  const { plan, ledger } = scene;
  // The finish of a row asks only for counts that were wrong.
  if (moment.at === 'row' && ledger.debts.length === 0) return;
  const over = isOver(moment);
  for (let row = 0; row < plan.up.length; row += 1)
    for (let column = 0; column < plan.across.length; column += 1) {
      const pair = row * plan.columns + column;
      const step = countedStep(plan, pair);
      if (step < 0) continue;
      const plot = ledger.plots[pair]!;
      const done = plot.counted !== 'no' || over;
      const follows = plot.laid !== plan.across[column]! * plan.up[row]!;
      findings[step] = finding(done ? 'right' : 'none', follows);
      if (debtsOf(scene, step).length > 0) findings[step] = finding('wrong', false);
    }
}

/** What each pile makes is said or made; a pile below ten need not be counted, reading it is enough. */
export const counting: Aspect = {
  steps: (plan) =>
    plan.up.flatMap((up, row) =>
      plan.across.flatMap((across, column) =>
        across >= 1 && up >= 2
          ? [{ id: `counted:${row}:${column}`, skill: 'counting' as const }]
          : [],
      ),
    ),
  notes: { count: note },
  assess,
};
