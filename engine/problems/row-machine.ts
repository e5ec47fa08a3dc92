import { DEAD, type DigitMachine } from './digit-machine.ts';
import { EXCHANGES } from './limits.ts';
import type { Range } from './range.ts';

/** A row of the mat: its multiplier digit, and how often it may exchange (null: as it likes). */
export interface RowCondition {
  readonly digit: number;
  readonly exchanges: Range | null;
}

/** What has happened in the rows so far; `sent` and `exchanges` have one entry a row. */
interface Progress {
  readonly sent: readonly number[];
  readonly exchanges: readonly number[];
  /** Whether a pile has been as large as one has to be. */
  readonly reached: boolean;
}

/**
 * Follows several rows at once from the right: what each square sends to the next, how often each row
 * has exchanged, and whether a pile was large enough. Few states arise, because what the rows send is
 * bound together: it is the whole part of digit × fraction, with the same fraction in every row.
 */
export function rowMachine(rows: readonly RowCondition[], pile: Range | null): DigitMachine {
  const states: Progress[] = [];
  const known = new Map<number, number>();
  const intern = (progress: Progress): number => {
    const name = nameOf(progress);
    const found = known.get(name);
    if (found !== undefined) return found;
    known.set(name, states.length);
    states.push(progress);
    return states.length - 1;
  };
  const zeros = rows.map(() => 0);
  const start = intern({ sent: zeros, exchanges: zeros, reached: pile === null || pile.from <= 0 });
  return {
    start,
    radix: 2 ** 24,
    step: (state, laid) => {
      const next = advance(rows, pile, states[state]!, laid);
      return next === null ? DEAD : intern(next);
    },
    accepts: (state) => finishedWell(rows, states[state]!),
  };
}

/** Different for different progress, and below 2^44: a square sends at most 8, six rows at most. */
function nameOf({ sent, exchanges, reached }: Progress): number {
  let name = reached ? 1 : 0;
  for (let row = 0; row < sent.length; row++) name = name * 9 + sent[row]!;
  for (let row = 0; row < exchanges.length; row++) name = name * 13 + exchanges[row]!;
  return name;
}

function advance(
  rows: readonly RowCondition[],
  pile: Range | null,
  before: Progress,
  laid: number,
): Progress | null {
  const sent: number[] = [];
  const exchanges: number[] = [];
  let reached = before.reached;
  for (let index = 0; index < rows.length; index++) {
    const row = rows[index]!;
    const held = laid * row.digit + before.sent[index]!;
    const done = before.exchanges[index]! + (held >= 10 ? 1 : 0);
    if ((pile && held > pile.to) || (row.exchanges && done > row.exchanges.to)) return null;
    if (pile && held >= pile.from) reached = true;
    sent.push(Math.floor(held / 10));
    exchanges.push(worthCounting(done, row.exchanges));
  }
  return { sent, exchanges, reached };
}

/** Without an upper limit a row need not be counted beyond what it has to reach. */
function worthCounting(done: number, wanted: Range | null): number {
  if (wanted === null) return 0;
  return wanted.to >= EXCHANGES.to ? Math.min(done, wanted.from) : done;
}

const finishedWell = (rows: readonly RowCondition[], end: Progress): boolean =>
  end.reached &&
  rows.every(({ exchanges }, index) => !exchanges || end.exchanges[index]! >= exchanges.from);
