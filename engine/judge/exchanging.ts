import type { ActionOf } from '../mat/action.ts';
import { pileAt } from '../mat/bars.ts';
import type { Desk } from '../mat/desk.ts';
import { pileValue } from '../mat/position.ts';
import { noted, withDebts, withHalves, withHeaps } from './changes.ts';
import { paid } from './debts.ts';
import {
  added,
  amountAt,
  at,
  EMPTY_HEAP,
  halfAt,
  onlyRow,
  replaced,
  settledStep,
} from './ledger.ts';
import type { Debt, Half, Ledger, Note, Noted, Scene } from './scene.ts';

type Exchange = ActionOf<'exchange'>;

/** The exchange of ten-bars is judged by the place that it leaves. */
export const noteExchange: Note<Exchange> = (before, after, action, act) => {
  const ledger = moved(before, after, action);
  const from = action.from[0] + action.from[1];
  const to = action.to[0] + action.to[1];
  const step = settledStep(before.plan, from);
  const { tens, ones } = action;
  if (to === from + 1 && ones === tens) return noted(ledger, step, 'right', ones, tens);
  const change = amountAt(action.ones, to) - amountAt(action.tens, from + 1);
  if (change === 0n) return noted(ledger, step, 'right', ones, tens);
  const half = tens === 0 || ones === 0;
  const pending = halfAt(ledger, from)?.left ?? 0;
  const pairs = half && pending !== 0 && pending > 0 === (tens === 0);
  const near = ledger.debts.filter((debt) => isNear(before, debt, step, half));
  const left = pairs ? null : paid(near, change);
  if (left !== null) return noted(withoutPaid(ledger, near, left), step, 'right', ones, tens);
  if (half && (to === from + 1 || ones === 0)) return halfMade(ledger, action, step);
  return wrong(before, ledger, action, { act, change, step });
};

/** Bars carry their rows along; a square of another row gets something that came down (or up) on it. */
function moved({ plan, ledger }: Scene, after: Desk, action: Exchange): Ledger {
  const from = at(plan, action.from);
  const to = at(plan, action.to);
  const { rows } = ledger.heaps[from]!;
  let { heaps } = ledger;
  if (pileValue(pileAt(after, action.from)!) === 0) heaps = replaced(heaps, from, EMPTY_HEAP);
  if (action.ones > 0) {
    const there = heaps[to]!;
    // Ones laid before their tens are taken come from the row of the square that was named.
    const all = there.rows | rows;
    if (all !== there.rows) heaps = replaced(heaps, to, { pairs: there.pairs, rows: all });
  }
  const foreign = action.ones > 0 && (rows & ~(1 << action.to[0])) !== 0;
  const disturbed = foreign ? ledger.disturbed | (1 << action.to[0]) : ledger.disturbed;
  if (heaps === ledger.heaps && disturbed === ledger.disturbed) return ledger;
  return withHeaps(ledger, heaps, disturbed);
}

/**
 * A half-made exchange is first of all the beginning of an exchange: it pays at once only what the mat has
 * already answered for this very place; the rest is evened out at the next finish.
 */
function isNear({ charged }: Scene, debt: Debt, step: number, half: boolean): boolean {
  if (half) return debt.by === 'exchange' && debt.step === step && charged.has(step);
  return debt.step === step;
}

function withoutPaid(ledger: Ledger, near: readonly Debt[], left: readonly Debt[]): Ledger {
  const debts = ledger.debts.filter((debt) => !near.includes(debt) || left.includes(debt));
  return withDebts(ledger, debts);
}

/** At a finish a half that pays a debt of its own place whole was a mend, and both are gone. */
export function evenHalves({ plan, ledger }: Scene): Ledger {
  let { debts, halves } = ledger;
  for (const half of ledger.halves) {
    const near = debts.filter((debt) => debt.step === settledStep(plan, half.place));
    const left = paid(near, -amountAt(half.left, half.place + 1));
    if (left === null) continue;
    debts = debts.filter((debt) => !near.includes(debt) || left.includes(debt));
    halves = halves.filter((each) => each !== half);
  }
  return debts === ledger.debts ? ledger : withDebts(ledger, debts, halves);
}

/** One half may follow the other later; halves pair by the place of `from`. */
function halfMade(ledger: Ledger, action: Exchange, step: number): Noted {
  const place = action.from[0] + action.from[1];
  const before = halfAt(ledger, place);
  const left = (before?.left ?? 0) + action.tens - action.ones;
  const others = ledger.halves.filter((half) => half !== before);
  const halves = left === 0 ? others : inOrder(others, halfWith(before, left, action));
  const verdict = left === 0 ? 'right' : 'neutral';
  return noted(withHalves(ledger, halves), step, verdict, action.ones, action.tens);
}

function halfWith(before: Half | undefined, left: number, action: Exchange): Half {
  const { from, to } = action;
  return {
    place: from[0] + from[1],
    left,
    byRow: rowsAfter(before?.byRow ?? [], action),
    from,
    to,
  };
}

function inOrder(halves: readonly Half[], half: Half): readonly Half[] {
  return added(halves, half).sort((a, b) => a.place - b.place);
}

/** What is still half made in each row; a half of another row may make up for it, for halves pair by place. */
function rowsAfter(before: readonly number[], { from, tens, ones }: Exchange): number[] {
  const rows = new Array<number>(Math.max(before.length, from[0] + 1)).fill(0);
  for (let row = 0; row < before.length; row += 1) rows[row] = before[row]!;
  rows[from[0]]! += tens - ones;
  if (before.length === 0) return rows;
  for (const [row, left] of rows.entries()) {
    const other = rows.findIndex((each) => each * left < 0);
    if (other < 0) continue;
    const paired = Math.min(Math.abs(left), Math.abs(rows[other]!));
    rows[row]! -= Math.sign(left) * paired;
    rows[other]! += Math.sign(left) * paired;
  }
  return rows;
}

/** Ones laid alone on a wrong square still answer for the tens taken before. */
function wrong(
  { plan }: Scene,
  ledger: Ledger,
  action: Exchange,
  { act, change, step }: { act: number; change: bigint; step: number },
): Noted {
  const from = action.from[0] + action.from[1];
  const to = action.to[0] + action.to[1];
  const half = action.tens === 0 ? halfAt(ledger, from) : undefined;
  const tens = half === undefined ? action.tens : half.left;
  const amount = change - amountAt(tens - action.tens, from + 1);
  const row = onlyRow(
    ledger.heaps[at(plan, action.from)]!.rows | ledger.heaps[at(plan, action.to)]!.rows,
  );
  const early = row >= 0 && (ledger.disturbed & (1 << row)) === 0;
  const debt: Debt = {
    step,
    by: 'exchange',
    act,
    amount,
    owed:
      to === from + 1
        ? [{ at: to, beads: tens - action.ones }]
        : [
            { at: to, beads: -action.ones },
            { at: from + 1, beads: tens },
          ],
    square: action.to,
    row,
    early,
  };
  const others = ledger.halves.filter((each) => each !== half);
  const next = half === undefined ? ledger : withHalves(ledger, others);
  return noted(withDebts(next, [...next.debts, debt]), step, 'wrong', action.ones, action.tens);
}
