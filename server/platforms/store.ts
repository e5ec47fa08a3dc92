import { randomUUID } from 'node:crypto';
import type { Connection } from 'mongoose';
import { framingOrigins, type Registration } from './registration.ts';

type Stored = Omit<Registration, 'id'> & { _id: string };
/** What names one registration. */
export type ByClient = Pick<Registration, 'issuer' | 'clientId'>;

export type Platforms = ReturnType<typeof platformStore>;

/** How long a list of framing origins is believed, in ms: a new platform need not wait for a restart. */
const FRAMING_LIFETIME = 5_000;

export function platformStore(connection: Connection) {
  const stored = connection.collection<Stored>('registrations');
  let framing: { at: number; origins: Promise<string[]> } | null = null;

  async function list(): Promise<Registration[]> {
    return (await stored.find().sort({ name: 1 }).toArray()).map(registration);
  }

  return {
    list,

    async prepare(): Promise<void> {
      await stored.createIndex({ issuer: 1, clientId: 1 }, { unique: true });
    },

    async byId(id: string): Promise<Registration | null> {
      return optional(await stored.findOne({ _id: id }));
    },

    async byKid(kid: string): Promise<Registration | null> {
      return optional(await stored.findOne({ kid }));
    },

    /** Every registration of an issuer, or the one of this client. */
    async byIssuer(issuer: string, clientId?: string): Promise<Registration[]> {
      const named = clientId === undefined ? { issuer } : { issuer, clientId };
      return (await stored.find(named).toArray()).map(registration);
    },

    /** Makes the record or changes these fields of it; a new one has no deployment and so lets nobody in. */
    async save({ issuer, clientId }: ByClient, fields: Partial<Registration>): Promise<void> {
      const { id: _, ...changes } = fields;
      const blank = {
        name: '',
        authServer: null,
        deployments: [],
        frameOrigins: [],
        status: 'active',
      };
      const missing = Object.entries({ _id: randomUUID(), ...blank, kid: '' }).filter(
        ([key]) => !(key in changes),
      );
      await stored.updateOne(
        { issuer, clientId },
        { $set: changes, $setOnInsert: Object.fromEntries(missing) },
        { upsert: true },
      );
    },

    async remove({ issuer, clientId }: ByClient): Promise<void> {
      await stored.deleteOne({ issuer, clientId });
    },

    async approve(id: string, deployment: string): Promise<boolean> {
      const { matchedCount } = await stored.updateOne(
        { _id: id },
        { $addToSet: { deployments: deployment } },
      );
      return matchedCount === 1;
    },

    async isSuspended(id: string): Promise<boolean> {
      return (await stored.countDocuments({ _id: id, status: 'suspended' }, { limit: 1 })) > 0;
    },

    /** False when there is no such registration. */
    async setStatus(id: string, status: Registration['status']): Promise<boolean> {
      return (await stored.updateOne({ _id: id }, { $set: { status } })).matchedCount === 1;
    },

    /** Who may frame a page whose platform is not known (yet): every registered one. */
    allFramingOrigins(now = Date.now()): Promise<string[]> {
      if (framing === null || now - framing.at > FRAMING_LIFETIME) {
        const origins = list().then((all) => [...new Set(all.flatMap(framingOrigins))]);
        origins.catch(() => {
          framing = null;
        });
        framing = { at: now, origins };
      }
      return framing.origins;
    },
  };
}

function registration({ _id, ...fields }: Stored): Registration {
  return { id: _id, ...fields };
}

function optional(found: Stored | null): Registration | null {
  return found === null ? null : registration(found);
}
