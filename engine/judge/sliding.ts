import type { ActionOf } from '../mat/action.ts';
import { pileAt } from '../mat/bars.ts';
import { pileValue } from '../mat/position.ts';
import { noted, withDebts, withHeaps } from './changes.ts';
import { paid } from './debts.ts';
import {
  amountAt,
  at,
  debtsOf,
  EMPTY_HEAP,
  finding,
  isOver,
  onlyRow,
  settledStep,
  slidStep,
} from './ledger.ts';
import { isTrueRow } from './rows.ts';
import type { Aspect, Debt, Finding, Heap, Ledger, Moment, Note, Scene } from './scene.ts';

type Slide = ActionOf<'slide'>;

const note: Note<Slide> = (before, _after, action, act) => {
  const { plan } = before;
  const heap = before.ledger.heaps[at(plan, action.from)]!;
  const ledger = moved(before, action, heap);
  const from = action.from[0] + action.from[1];
  const to = action.to[0] + action.to[1];
  const step = payer(before, heap, from);
  const given = plan.problem.mat.origin + to;
  const due = plan.problem.mat.origin + from;
  if (from === to) {
    const verdict = action.to[0] < action.from[0] ? 'right' : 'neutral';
    return noted(ledger, step, verdict, given, due);
  }
  const beads = pileValue(pileAt(before.position, action.from)!);
  const amount = amountAt(beads, to) - amountAt(beads, from);
  const left = paid(ledger.debts, amount);
  if (left !== null) return noted(withDebts(ledger, left), step, 'right', given, due);
  const debt: Debt = {
    step,
    by: 'slide',
    act,
    amount,
    owed: [
      { at: to, beads: -beads },
      { at: from, beads },
    ],
    square: action.to,
    row: onlyRow(heap.rows),
    early: false,
  };
  return noted(withDebts(ledger, [...ledger.debts, debt]), step, 'wrong', given, due);
};

function payer({ plan }: Scene, heap: Heap, place: number): number {
  const slid = slidStep(plan, heap.rows);
  return slid >= 0 ? slid : settledStep(plan, place);
}

function moved({ plan, ledger }: Scene, action: Slide, heap: Heap): Ledger {
  const from = at(plan, action.from);
  const to = at(plan, action.to);
  if (from === to) return ledger;
  const there = ledger.heaps[to]!;
  const pairs = merged(there.pairs, heap.pairs);
  const heaps = ledger.heaps.slice();
  heaps[from] = EMPTY_HEAP;
  heaps[to] = { pairs, rows: there.rows | heap.rows };
  const disturbed = ledger.disturbed | heap.rows | (1 << action.to[0]) | (1 << action.from[0]);
  return withHeaps(ledger, heaps, disturbed);
}

/** Both lists go up, and so does what they make together. */
function merged(some: readonly number[], others: readonly number[]): readonly number[] {
  if (some.length === 0) return others;
  const all: number[] = [];
  let next = 0;
  for (let index = 0; index < some.length; index += 1) {
    const pair = some[index]!;
    while (next < others.length && others[next]! < pair) all.push(others[next++]!);
    if (others[next] === pair) next += 1;
    all.push(pair);
  }
  while (next < others.length) all.push(others[next++]!);
  return all;
}

/** The step that pays for a pile left above the bottom row. */
export function leftAbove(scene: Scene, square: readonly [number, number]): number {
  return payer(scene, scene.ledger.heaps[at(scene.plan, square)]!, square[0] + square[1]);
}

function assess(scene: Scene, moment: Moment, findings: Finding[]): void {
  const { plan, ledger } = scene;
  // The finish of a row asks only for slides that were wrong.
  if (moment.at === 'row' && ledger.debts.length === 0) return;
  const over = isOver(moment);
  let above = 0;
  for (let row = 1; row < plan.rows; row += 1)
    for (let column = 0; column < plan.columns; column += 1) {
      if (pileValue(scene.position.piles[row]![column]!) > 0)
        above |= ledger.heaps[row * plan.columns + column]!.rows;
    }
  for (let row = 1; row < plan.up.length; row += 1) {
    const step = plan.tables.slid[row];
    if (step === undefined) continue;
    const follows = !isTrueRow(scene, row);
    const gone = (above & (1 << row)) === 0 && (ledger.disturbed & (1 << row)) !== 0;
    findings[step] = finding(over || gone ? 'right' : 'none', follows);
    if (debtsOf(scene, step).length > 0) findings[step] = finding('wrong', false);
  }
}

/** Every row above the bottom comes down along the diagonals. */
export const sliding: Aspect = {
  steps: (plan) =>
    plan.up.flatMap((digit, row) =>
      row > 0 && digit > 0 ? [{ id: `slid:${row}`, skill: 'sliding' as const }] : [],
    ),
  notes: { slide: note },
  assess,
};
