import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coalesce, type DeliveryRow, SPACING, unfit } from '../../server/delivery/row.ts';
import { markOf, START } from './bench.ts';

const ITEM = 'https://moodle.example/2/lineitems/2/lineitem?type_id=1';
const mark = (changes = {}) => markOf(ITEM, changes);

function begun(changes: Partial<DeliveryRow> = {}): DeliveryRow {
  const row = coalesce(null, mark(), START, 'row-1');
  if (row === null) throw new Error('a first mark makes a row');
  return { ...row, ...changes };
}

describe('a new mark in its row', () => {
  it('begins as revision 1, due at once', () => {
    expect(begun()).toMatchObject({
      ...{ _id: 'row-1', state: 'waiting', target: ITEM, nextTry: START, lastSent: null },
      desired: { revision: 1, timestamp: START - 1_000 },
    });
  });

  it('is nothing new when the very same mark is put again', () => {
    expect(coalesce(begun(), mark(), START + 60_000, 'row-2')).toBeNull();
  });

  it.each([
    ['another attempt', { attempt: 'attempt-2' }],
    ['other points', { scoreGiven: 8 }],
    ['another maximum', { scoreMaximum: 20 }],
    ['another comment', { comment: 'Looked at again.' }],
    ['a later time', { timestamp: new Date(START) }],
  ])('is the next revision with %s', (_, changes) => {
    const next = coalesce(begun({ state: 'sent' }), mark(changes), START + 60_000, 'row-2');
    expect(next).toMatchObject({ _id: 'row-1', state: 'waiting', desired: { revision: 2 } });
  });

  it('leaves a row to the sender that has it', () => {
    const row = begun({ state: 'sending', claim: 'mine', nextTry: START + 30_000 });
    const next = coalesce(row, mark({ scoreGiven: 8 }), START + 5, 'row-2');
    expect(next).toMatchObject({ state: 'sending', claim: 'mine', nextTry: START + 30_000 });
  });

  it.each(['held', 'stuck'] as const)('frees a row that is %s', (state) => {
    const row = begun({
      state,
      reason: 'failing',
      tries: 7,
      failures: 5,
      firstTry: 1,
      lookFirst: true,
    });
    expect(coalesce(row, mark({ scoreGiven: 8 }), START + 5, 'row-2')).toMatchObject({
      ...{
        state: 'waiting',
        reason: null,
        tries: 0,
        failures: 0,
        firstTry: null,
        lookFirst: false,
      },
    });
  });

  it('never carries a time that has not come yet', () => {
    const early = coalesce(null, mark({ timestamp: new Date(START + 3_600_000) }), START, 'row-1');
    expect(early?.desired.timestamp).toBe(START);
  });

  it('has a comment of one line', () => {
    const row = coalesce(null, mark({ comment: ' Two\nproblems,\t both right. ' }), START, 'row-1');
    expect(row?.desired.comment).toBe('Two problems, both right.');
  });

  it('never goes back in time, and stays two seconds above what was posted', () => {
    const finish = fc.record({
      asked: fc.integer({ min: START - 10_000, max: START + 10_000 }),
      passed: fc.integer({ min: -5_000, max: 5_000 }),
      posted: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(finish, { minLength: 1, maxLength: 30 }), (finishes) => {
        let row: DeliveryRow | null = null;
        let now = START;
        finishes.forEach(({ asked, passed, posted }, n) => {
          now += passed;
          const before: DeliveryRow | null = row;
          const score = mark({ attempt: `attempt-${n}`, timestamp: new Date(asked) });
          const next: DeliveryRow | null = coalesce(before, score, now, 'row-1');
          if (next === null) throw new Error('every finish here is a new one');
          const earliest = Math.min(asked, now);
          expect(next.desired.timestamp).toBeGreaterThanOrEqual(earliest);
          if (before !== null) {
            expect(next.desired.revision).toBe(before.desired.revision + 1);
            expect(next.desired.timestamp).toBeGreaterThanOrEqual(before.desired.timestamp);
            expect(next.desired.timestamp).toBeGreaterThanOrEqual(before.highest + SPACING);
          }
          row = posted ? { ...next, highest: next.desired.timestamp } : next;
        });
      }),
    );
  });
});

describe('what may not be put into the outbox', () => {
  it.each([
    ['a maximum of 0', { scoreMaximum: 0 }],
    ['no maximum', { scoreMaximum: Number.NaN }],
    ['more points than there are', { scoreGiven: 10.01 }],
    ['fewer points than none', { scoreGiven: -1 }],
    ['points that are no number', { scoreGiven: Number.NaN }],
    ['a time that is none', { timestamp: new Date(Number.NaN) }],
    ['an empty comment', { comment: ' \n ' }],
  ])('%s', (_, changes) => {
    expect(unfit(mark(changes))).toEqual(expect.any(String));
  });

  it('nothing else: 0 of 10 is a mark', () => {
    expect(unfit(mark({ scoreGiven: 0 }))).toBeNull();
  });
});
