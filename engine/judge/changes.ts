import type { Ledger, Noted, OnPaper, Readings, Remark } from './scene.ts';

/**
 * The ledger with one thing changed. Each is written out, so that every ledger is laid out alike: a spread makes a
 * layout of its own wherever it stands, and the judge reads ledgers all the time.
 */
function withBars(
  ledger: Ledger,
  plots: Ledger['plots'],
  heaps: Ledger['heaps'],
  debts: Ledger['debts'],
  halves: Ledger['halves'],
  disturbed: number,
): Ledger {
  const { readings, onPaper } = ledger;
  return { plots, heaps, debts, halves, disturbed, readings, onPaper };
}

export function withPlots(ledger: Ledger, plots: Ledger['plots'], heaps = ledger.heaps): Ledger {
  return withBars(ledger, plots, heaps, ledger.debts, ledger.halves, ledger.disturbed);
}

export function withHeaps(ledger: Ledger, heaps: Ledger['heaps'], disturbed: number): Ledger {
  return withBars(ledger, ledger.plots, heaps, ledger.debts, ledger.halves, disturbed);
}

export function withDebts(
  ledger: Ledger,
  debts: Ledger['debts'],
  halves = ledger.halves,
  plots = ledger.plots,
): Ledger {
  return withBars(ledger, plots, ledger.heaps, debts, halves, ledger.disturbed);
}

export function withHalves(ledger: Ledger, halves: Ledger['halves']): Ledger {
  return withDebts(ledger, ledger.debts, halves);
}

export function withReadings(ledger: Ledger, changed: Partial<Readings>): Ledger {
  const { plots, heaps, debts, halves, disturbed, onPaper } = ledger;
  const before = ledger.readings;
  const readings = {
    read: changed.read ?? before.read,
    said: changed.said ?? before.said,
    saidThen: changed.saidThen ?? before.saidThen,
    answered: changed.answered ?? before.answered,
    seen: changed.seen ?? before.seen,
  };
  return { plots, heaps, debts, halves, disturbed, readings, onPaper };
}

export function withPaper(ledger: Ledger, changed: Partial<OnPaper>): Ledger {
  const { plots, heaps, debts, halves, disturbed, readings } = ledger;
  const before = ledger.onPaper;
  const onPaper = {
    lines: changed.lines ?? before.lines,
    sumLine: changed.sumLine ?? before.sumLine,
    pens: changed.pens ?? before.pens,
    sumPens: changed.sumPens ?? before.sumPens,
    squares: changed.squares ?? before.squares,
  };
  return { plots, heaps, debts, halves, disturbed, readings, onPaper };
}

/** What a note makes of an action, laid out alike for the same reason. */
export function noted(
  ledger: Ledger,
  step: number,
  verdict: Remark['verdict'],
  given: Remark['given'],
  due: Remark['due'],
): Noted {
  return { ledger, remark: { step, verdict, given, due } };
}
