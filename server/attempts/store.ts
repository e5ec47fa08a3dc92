import { randomUUID } from 'node:crypto';
import type { Connection } from 'mongoose';
import { upserting } from '../database/failure.ts';
import type { Transaction } from '../database/transaction.ts';
import type { Person, Session } from '../sessions/schema.ts';
import { type Attempt, attemptSchema, type Entry, type ScoreText } from './schema.ts';

/** An attempt is opened by the person it belongs to, never by its id alone. */
export type Owner = Person & { readonly id: string };
type Key = Pick<Attempt, keyof Person | 'placement' | 'activity'>;
type Beginning = Pick<Attempt, 'context' | 'version' | 'trial'>;

/** What a batch adds. */
export interface Addition {
  readonly base: number;
  readonly entries: Entry[];
  readonly problemsFinished: number;
}

/** What the batch that finishes the last problem adds besides. */
export interface Finish {
  readonly finishedAt: Date;
  readonly releasedAt: Date | null;
  readonly score: ScoreText;
}

const BLANK = {
  chosen: null,
  length: 0,
  actions: [],
  problemsFinished: 0,
  finishedAt: null,
  releasedAt: null,
  score: null,
};

export type AttemptStore = ReturnType<typeof attemptStore>;

export function attemptStore(connection: Connection) {
  const attempts = connection.model<Attempt>('Attempt', attemptSchema);
  const appending = connection.collection<Attempt>(attempts.collection.name);
  return {
    prepare: () => attempts.createIndexes(),

    /** The attempt of this person on this activity here, begun if there is none yet. */
    async begin(key: Key, beginning: Beginning, now: Date): Promise<string> {
      const made = { _id: randomUUID(), ...beginning, ...BLANK, openedAt: now };
      const kept = await upserting(() =>
        attempts
          .findOneAndUpdate(key, { $setOnInsert: made }, { upsert: true, returnDocument: 'after' })
          .select('_id')
          .lean<Pick<Attempt, '_id'>>()
          .orFail()
          .exec(),
      );
      return kept._id;
    },

    find: (owner: Owner) => attempts.findOne(named(owner)).lean<Attempt>().exec(),

    /** How many actions are kept; `null` if there is no such attempt. */
    async lengthOf(owner: Owner): Promise<number | null> {
      const found = await attempts.findOne(named(owner)).select('length').lean<Attempt>().exec();
      return found?.length ?? null;
    },

    /** Keeps what was picked, once: a second choice changes nothing. */
    async choose(owner: Owner, chosen: number): Promise<void> {
      await attempts.updateOne({ ...named(owner), chosen: null }, { $set: { chosen } });
    },

    /**
     * Appends if nothing was appended since `base`; false otherwise. By the driver itself: a child waits for this one,
     * and what it writes was made by the wire schema and the engine, so that casting it again finds nothing.
     */
    async append(
      owner: Owner,
      { base, entries, problemsFinished }: Addition,
      finish?: { readonly finish: Finish; readonly transaction: Transaction },
    ): Promise<boolean> {
      const changed = await appending.updateOne(
        { ...named(owner), length: base },
        {
          $push: { actions: { $each: entries } },
          $inc: { length: entries.length },
          $set: { problemsFinished, ...finish?.finish },
        },
        { ...(finish && { session: finish.transaction }) },
      );
      return changed.matchedCount === 1;
    },

    /** Lets the learner see the score; false if that is so already, or there is none yet. */
    async release(owner: Owner, now: Date, transaction: Transaction): Promise<boolean> {
      const changed = await attempts.updateOne(
        { ...named(owner), finishedAt: { $ne: null }, releasedAt: null },
        { $set: { releasedAt: now } },
        { session: transaction },
      );
      return changed.matchedCount === 1;
    },

    /** All work that counts at the placement of a session, in the order in which it was begun; without the actions. */
    atPlacement: ({ registration, deployment, context, placement }: Session) =>
      attempts
        .find({ registration, deployment, context, placement, trial: false })
        .sort({ openedAt: 1, _id: 1 })
        .select('-actions')
        .lean<Omit<Attempt, 'actions'>[]>()
        .exec(),
  };
}

function named({ id, registration, deployment, subject }: Owner) {
  return { _id: id, registration, deployment, subject };
}
