import { randomUUID } from 'node:crypto';
import type { Connection } from 'mongoose';
import { upserting } from '../database/failure.ts';
import {
  type Enrolment,
  enrolmentSchema,
  type Person,
  type Placement,
  placementSchema,
  type Session,
  sessionSchema,
} from './schema.ts';

export type SessionStore = ReturnType<typeof sessionStore>;

export function sessionStore(connection: Connection) {
  const sessions = connection.model<Session>('Session', sessionSchema);
  return {
    prepare: () => sessions.createIndexes(),

    async keep(session: Session): Promise<void> {
      await sessions.create([session]);
    },

    /** The database sweeps only once a minute; what has expired is not found even before. */
    find: (digest: string, now: Date) =>
      sessions
        .findOne({ _id: digest, expiresAt: { $gt: now } })
        .lean<Session>()
        .exec(),

    async slide(digest: string, now: Date, expiresAt: Date): Promise<boolean> {
      const changed = await sessions.updateOne(
        { _id: digest, expiresAt: { $gt: now } },
        { $max: { expiresAt } },
      );
      return changed.matchedCount === 1;
    },
  };
}

type Seen = Pick<Enrolment, keyof Person | 'context' | 'role' | 'trial'>;
type InCourse = Pick<Enrolment, keyof Person | 'context'>;
export type EnrolmentStore = ReturnType<typeof enrolmentStore>;

export function enrolmentStore(connection: Connection) {
  const enrolments = connection.model<Enrolment>('Enrolment', enrolmentSchema);
  return {
    prepare: () => enrolments.createIndexes(),

    async see({ role, trial, ...key }: Seen, now: Date): Promise<void> {
      const change = { $set: { role, trial, seenAt: now }, $setOnInsert: { firstSeenAt: now } };
      await upserting(() => enrolments.updateOne(key, change, { upsert: true }));
    },

    find: ({ registration, deployment, subject, context }: InCourse) =>
      enrolments.findOne({ registration, deployment, subject, context }).lean<Enrolment>().exec(),
  };
}

type PlacementKey = Pick<Placement, 'registration' | 'deployment' | 'context' | 'resourceLink'>;
type PlacementNews = Omit<Placement, '_id' | keyof PlacementKey>;
export type PlacementStore = ReturnType<typeof placementStore>;

export function placementStore(connection: Connection) {
  const placements = connection.model<Placement>('Placement', placementSchema);
  return {
    prepare: () => placements.createIndexes(),

    find: ({ registration, deployment, context, resourceLink }: PlacementKey) =>
      placements
        .findOne({ registration, deployment, context, resourceLink })
        .lean<Placement>()
        .exec(),

    ofSession: ({ placement, registration, deployment, context }: Session) =>
      placements
        .findOne({ _id: placement, registration, deployment, context })
        .lean<Placement>()
        .exec(),

    /** Where the platform lists the line items of a placement; for the outbox, which names no person to a placement. */
    async gradesOf(id: string): Promise<{ lineitems: string; resourceLink: string } | null> {
      const found = await placements.findOne({ _id: id }).lean<Placement>().exec();
      if (found === null || found.lineitems === null) return null;
      return { lineitems: found.lineitems, resourceLink: found.resourceLink };
    },

    /** Makes the placement or brings it up to date with what the platform says at this launch. */
    async refresh(key: PlacementKey, news: PlacementNews): Promise<Placement> {
      const change = { $set: news, $setOnInsert: { _id: randomUUID() } };
      return upserting(() =>
        placements
          .findOneAndUpdate(key, change, { upsert: true, returnDocument: 'after' })
          .lean<Placement>()
          .orFail()
          .exec(),
      );
    },
  };
}
