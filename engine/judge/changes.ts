import type { Ledger, Noted, Remark } from './scene.ts';

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
  const { read, said, saidThen, answered, seen, lines, sumLine, pens, sumPens, squares } = ledger;
  return {
    plots,
    heaps,
    debts,
    halves,
    disturbed,
    read,
    said,
    saidThen,
    answered,
    seen,
    lines,
    sumLine,
    pens,
    sumPens,
    squares,
  };
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

type Readings = Pick<Ledger, 'read' | 'said' | 'saidThen' | 'answered' | 'seen'>;

export function withReadings(ledger: Ledger, readings: Partial<Readings>): Ledger {
  const { plots, heaps, debts, halves, disturbed, lines, sumLine, pens, sumPens, squares } = ledger;
  return {
    plots,
    heaps,
    debts,
    halves,
    disturbed,
    read: readings.read ?? ledger.read,
    said: readings.said ?? ledger.said,
    saidThen: readings.saidThen ?? ledger.saidThen,
    answered: readings.answered ?? ledger.answered,
    seen: readings.seen ?? ledger.seen,
    lines,
    sumLine,
    pens,
    sumPens,
    squares,
  };
}

type OnPaper = Pick<Ledger, 'lines' | 'sumLine' | 'pens' | 'sumPens' | 'squares'>;

export function withPaper(ledger: Ledger, paper: Partial<OnPaper>): Ledger {
  const { plots, heaps, debts, halves, disturbed, read, said, saidThen, answered, seen } = ledger;
  return {
    plots,
    heaps,
    debts,
    halves,
    disturbed,
    read,
    said,
    saidThen,
    answered,
    seen,
    lines: paper.lines ?? ledger.lines,
    sumLine: paper.sumLine ?? ledger.sumLine,
    pens: paper.pens ?? ledger.pens,
    sumPens: paper.sumPens ?? ledger.sumPens,
    squares: paper.squares ?? ledger.squares,
  };
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
