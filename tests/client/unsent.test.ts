import { describe, expect, it } from 'vitest';
import type { Sent } from '../../client/api/attempt.ts';
import {
  acknowledge,
  actionsOf,
  addSent,
  isKnown,
  openLedger,
  rebase,
} from '../../client/work/ledger.ts';
import { openUnsentStore, purgeUnsent } from '../../client/work/unsent-store.ts';
import { newStorage } from './browser-storage.ts';

const DAY = 24 * 60 * 60_000;

const sent = (client: string, n: number, problem = 0): Sent => ({
  client,
  n,
  at: n,
  problem,
  action: { do: 'check' },
});

describe('what is unsent, on the device', () => {
  const open = (storage: Storage | null, person = 'ada', now = 0) =>
    openUnsentStore(storage, 'attempt', person, () => now);

  it('is there again for the same person, of all pages, in order', () => {
    const storage = newStorage();
    open(storage, 'ada', 1).add(sent('one', 0));
    open(storage, 'ada', 2).add(sent('two', 0));
    open(storage, 'ada', 1).add(sent('one', 1));
    expect(open(storage).load()).toEqual([sent('one', 0), sent('one', 1), sent('two', 0)]);
  });

  it('is not there for another person, nor in another attempt', () => {
    const storage = newStorage();
    open(storage).add(sent('one', 0));
    expect(open(storage, 'bo').load()).toEqual([]);
    expect(openUnsentStore(storage, 'other', 'ada', Date.now).load()).toEqual([]);
  });

  it('goes once it is acknowledged, while a page beside it keeps its own', () => {
    const storage = newStorage();
    open(storage).add(sent('one', 0));
    open(storage).add(sent('two', 0));
    open(storage).drop(({ client }) => client === 'one');
    expect(open(storage).load()).toEqual([sent('two', 0)]);
  });

  it('is forgotten after fourteen days, whoever did it', () => {
    const storage = newStorage();
    open(storage, 'ada', 0).add(sent('one', 0));
    purgeUnsent(storage, 14 * DAY - 1);
    expect(open(storage).load()).toHaveLength(1);
    purgeUnsent(storage, 14 * DAY);
    expect(open(storage).load()).toEqual([]);
  });

  it('is not called kept where the browser gives no storage', () => {
    expect(open(null).add(sent('one', 0))).toBe(false);
  });
});

describe('the ledger', () => {
  it('lays what the device holds on what the server has, nothing twice', () => {
    const ledger = openLedger([sent('one', 0)], [sent('one', 0), sent('one', 1)]);
    expect(ledger.unsent).toEqual([sent('one', 1)]);
  });

  it('moves what is acknowledged to what is known, and keeps what is not', () => {
    const before = openLedger([], [sent('one', 0), sent('one', 1)]);
    const after = acknowledge(before, { one: 0 }, []);
    expect(after.known).toEqual([sent('one', 0)]);
    expect(after.unsent).toEqual([sent('one', 1)]);
    expect(isKnown(after)(sent('one', 0))).toBe(true);
    expect(isKnown(after)(sent('one', 1))).toBe(false);
  });

  it('does not take for saved what a page beside it holds unsent', () => {
    const ledger = openLedger([sent('one', 0)], []);
    expect(isKnown(ledger)(sent('two', 0))).toBe(false);
  });

  it('puts the tail of another page before its own unsent actions', () => {
    const before = addSent(openLedger([sent('one', 0)], []), sent('one', 1));
    const tail = { length: 2, actions: [sent('two', 0)] };
    expect(actionsOf(rebase(before, 1, tail), 0)).toEqual([
      sent('one', 0),
      sent('two', 0),
      sent('one', 1),
    ]);
  });

  it('finds its own actions in the tail when an answer was lost on its way', () => {
    const before = openLedger([], [sent('one', 0), sent('one', 1)]);
    const after = rebase(before, 0, { length: 1, actions: [sent('one', 0)] });
    expect(after.unsent).toEqual([sent('one', 1)]);
  });

  it('leaves out what was set aside, and the other problems', () => {
    const ledger = openLedger(
      [{ ...sent('one', 0), aside: 'finished' }, sent('one', 1, 1)],
      [sent('one', 2)],
    );
    expect(actionsOf(ledger, 0)).toEqual([sent('one', 2)]);
    expect(actionsOf(ledger, 1)).toEqual([sent('one', 1, 1)]);
  });
});
