import { randomUUID } from 'node:crypto';
import type { Connection, mongo } from 'mongoose';
import type { Transaction } from '../database/transaction.ts';
import { LEASE } from './patience.ts';
import {
  coalesce,
  type DeliveryKey,
  type DeliveryRow,
  type DeliveryState,
  type ScoreToSend,
} from './row.ts';
import type { Changes } from './settle.ts';

const DUPLICATE_KEY = 11000;

export type Outbox = ReturnType<typeof outboxStore>;

/** The rows of the outbox: one per registration, deployment, line item and subject. Every change is one atomic write. */
export function outboxStore(connection: Connection) {
  const rows = connection.collection<DeliveryRow>('deliveries');

  return {
    async prepare(): Promise<void> {
      await rows.createIndex(
        { registration: 1, deployment: 1, lineitem: 1, subject: 1 },
        { unique: true },
      );
      await rows.createIndex(
        { registration: 1, slot: 1 },
        { unique: true, partialFilterExpression: { slot: { $type: 'number' } }, name: 'places' },
      );
      await rows.createIndex({ state: 1, nextTry: 1 });
      await rows.createIndex({ registration: 1, state: 1, nextTry: 1 });
    },

    /** Puts the mark into its row, as part of the caller's transaction; a conflict makes that one run again. */
    async put(session: Transaction, score: ScoreToSend, now: number): Promise<void> {
      const row = await rows.findOne(keyOf(score), { session });
      const next = coalesce(row, score, now, randomUUID());
      if (next !== null) await rows.replaceOne({ _id: next._id }, next, { session, upsert: true });
    },

    find(key: DeliveryKey): Promise<DeliveryRow | null> {
      return rows.findOne(keyOf(key));
    },

    /** The rows of one column. */
    ofLineItem({ registration, deployment, lineitem }: Omit<DeliveryKey, 'subject'>) {
      return rows.find({ registration, deployment, lineitem }).toArray();
    },

    /** What is not in the gradebook, the longest waiting first. */
    unsettled(): Promise<DeliveryRow[]> {
      return rows
        .find({ state: { $in: ['waiting', 'sending', 'held', 'stuck'] } })
        .sort({ state: 1, nextTry: 1 })
        .toArray();
    },

    /** Platforms with something due. */
    dueRegistrations(now: number): Promise<string[]> {
      return rows.distinct('registration', due(now));
    },

    /** Takes the row that is due longest, as it was before; null when there is none or the place is taken. */
    async claim(
      registration: string,
      slot: number,
      now: number,
    ): Promise<{ row: DeliveryRow; claim: string } | null> {
      const claim = randomUUID();
      for (const place of [slot, null]) {
        const row = await take({ registration, slot: place, ...due(now) }, claim, slot, now);
        if (row !== null) return { row, claim };
      }
      return null;
    },

    /** Renews the lease; false when the row is no longer this sender's, or a newer mark came in. */
    async keep(row: DeliveryRow, claim: string, now: number): Promise<boolean> {
      const mine = { _id: row._id, claim, 'desired.revision': row.desired.revision };
      const { matchedCount } = await rows.updateOne(mine, { $set: { nextTry: now + LEASE } });
      return matchedCount === 1;
    },

    /** Gives the row back, if it is still this sender's: `facts` always, `state` only if no newer mark came in. */
    async finish(
      row: DeliveryRow,
      claim: string,
      facts: Changes,
      state: Changes,
      now: number,
    ): Promise<void> {
      const mine = { _id: row._id, claim };
      const unmoved = { ...mine, 'desired.revision': row.desired.revision };
      const { matchedCount } = await rows.updateOne(unmoved, { $set: { ...facts, ...state } });
      if (matchedCount === 1) return;
      const nextTry = Math.max(now, facts.notBefore ?? row.notBefore);
      await rows.updateOne(mine, { $set: { ...facts, state: 'waiting', reason: null, nextTry } });
    },

    /** Somebody's decision about a row in one of these states; false when there is no such row. */
    async decide(
      id: string,
      states: readonly DeliveryState[],
      overrule: boolean,
      now: number,
    ): Promise<boolean> {
      const { matchedCount } = await rows.updateOne({ _id: id, state: { $in: [...states] } }, [
        {
          $set: {
            ...{ state: 'waiting', lookFirst: true, overrule },
            ...{ tries: 0, firstTry: null, failures: 0 },
            nextTry: { $max: [now, '$notBefore'] },
          },
        },
      ]);
      return matchedCount === 1;
    },
  };

  /** `sending` under a lease that has run out is due as well: its sender died. */
  async function take(
    filter: mongo.Filter<DeliveryRow>,
    claim: string,
    slot: number,
    now: number,
  ): Promise<DeliveryRow | null> {
    try {
      return await rows.findOneAndUpdate(filter, [{ $set: claimed(claim, slot, now) }], {
        sort: { nextTry: 1 },
        returnDocument: 'before',
      });
    } catch (error) {
      if ((error as { code?: unknown }).code === DUPLICATE_KEY) return null;
      throw error;
    }
  }
}

function keyOf({ registration, deployment, lineitem, subject }: DeliveryKey): DeliveryKey {
  return { registration, deployment, lineitem, subject };
}

function due(now: number): mongo.Filter<DeliveryRow> {
  return { state: { $in: ['waiting', 'sending'] }, nextTry: { $lte: now } };
}

/** The claim also notes that the revision may go out: after a crash that is all anybody knows. */
function claimed(claim: string, slot: number, now: number): mongo.Document {
  const { revision, scoreGiven, scoreMaximum, timestamp } = {
    revision: '$desired.revision',
    scoreGiven: '$desired.scoreGiven',
    scoreMaximum: '$desired.scoreMaximum',
    timestamp: '$desired.timestamp',
  };
  const posting = { revision, scoreGiven, scoreMaximum, timestamp };
  const known = { $in: [revision, '$inDoubt.revision'] };
  return {
    ...{ state: 'sending', claim, slot, nextTry: now + LEASE, lookFirst: true },
    tries: { $add: ['$tries', 1] },
    firstTry: { $ifNull: ['$firstTry', now] },
    highest: { $max: ['$highest', timestamp] },
    inDoubt: { $cond: [known, '$inDoubt', { $concatArrays: ['$inDoubt', [posting]] }] },
  };
}
