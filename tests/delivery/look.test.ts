import { describe, expect, it } from 'vitest';
import { look, shows } from '../../server/delivery/look.ts';
import { coalesce, type DeliveryRow, type Posting } from '../../server/delivery/row.ts';
import { markOf, START } from './bench.ts';

const posting = (revision: number, scoreGiven: number, timestamp: number): Posting => ({
  ...{ revision, scoreGiven, timestamp },
  scoreMaximum: 10,
});

const SENT = posting(1, 4, START - 60_000);
const DUE = posting(2, 7.5, START);

/** Revision 1 is in the gradebook, revision 2 is due. */
function row(changes: Partial<DeliveryRow> = {}): DeliveryRow {
  const first = coalesce(null, markOf('https://moodle.example/1/lineitem'), START, 'row-1');
  if (first === null) throw new Error('a first mark makes a row');
  const desired = { ...first.desired, ...DUE };
  return { ...first, desired, lastSent: SENT, ...changes };
}

const result = (score: number, timestamp: number | null = START) => ({
  ...{ score, timestamp },
  maximum: 10,
});

describe('what the gradebook shows', () => {
  it.each([
    ['the mark sent before', row(), result(4, START - 60_000), 'clear'],
    ['the mark that is due, by chance', row(), result(7.5), 'clear'],
    ['the mark that is due and was posted', row({ inDoubt: [DUE] }), result(7.5), 'delivered'],
    [
      'that one, whole seconds only',
      row({ inDoubt: [DUE] }),
      result(7.5, START - 250),
      'delivered',
    ],
    ['that one, from before', row({ inDoubt: [DUE] }), result(7.5, START - 5_000), 'clear'],
    ['that one, without a time', row({ inDoubt: [DUE] }), result(7.5, null), 'clear'],
    ['a mark posted in between', row({ inDoubt: [posting(2, 6, START)] }), result(6), 'clear'],
    ['another mark', row({ inDoubt: [DUE] }), result(9), 'changedOnPlatform'],
    ['nothing, though a mark was sent', row(), null, 'removedOnPlatform'],
    ['nothing, as nothing was sent', row({ lastSent: null }), null, 'clear'],
    ['a mark, though nothing was sent', row({ lastSent: null }), result(3), 'changedOnPlatform'],
  ] as const)('%s', (_, due, shown, seen) => {
    expect(look(due, shown)).toBe(seen);
  });

  /** Rounding and rescaling as recorded from Moodle 4.5.6: 6.123456789 is kept as 6.12346, 90 of 100 as 9 of 10. */
  it.each([
    [6.123456789, 10, 6.12346, true],
    [90, 100, 9, true],
    [7.5, 10, 7.51, false],
    [7.5, 10, 7.49, false],
    [0, 10, 0, true],
  ])(
    'is compared on its own scale: %d of %d shown as %d',
    (scoreGiven, scoreMaximum, score, same) => {
      const given = { revision: 1, scoreGiven, scoreMaximum, timestamp: START };
      expect(shows({ score, maximum: 10, timestamp: null }, given)).toBe(same);
    },
  );
});
