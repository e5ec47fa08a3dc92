import type { Connection } from 'mongoose';

/** From a login to the platform's answer: how long, in seconds. */
const LOGIN_LIFETIME = 600;
/** From a verified launch to the browser's proof, in seconds. */
const PENDING_LIFETIME = 60;
/** After this a confirm that never finished is taken over by the next one, in ms. */
const CLAIM_LIFETIME = 10_000;

/** The platform's storage that a login named, see the page's `platform-storage`. */
export interface StorageTarget {
  frame: string;
  origin: string;
}

/** A login under way. Secrets are kept as digests only; the record is gone with its first use. */
export interface Login {
  /** Digest of the state. */
  _id: string;
  nonce: string;
  proof: string;
  registration: string;
  storage: StorageTarget | null;
  /** The platform's parameters, to start again in a tab. */
  initiation: Record<string, string>;
  createdAt: Date;
}

/** A verified launch that waits for its browser. */
export interface Pending {
  /** Digest of the one-time code. */
  _id: string;
  proof: string;
  /** Names the cookie that may hold the proof. */
  proofKey: string;
  /** A `VerifiedLaunch` as JSON: keys of `custom` may hold what field names may not. */
  launch: string;
  initiation: Record<string, string> | null;
  claimedAt: Date | null;
  /** What the first confirm was answered, sealed with the code. */
  answer: string | null;
  createdAt: Date;
}

/** Our key pair towards one platform. `pem` of a private key is sealed. */
export interface ToolKey {
  _id: string;
  kid: string;
  half: 'public' | 'private';
  issuer: string;
  clientId: string;
  pem: string;
}

export type LaunchStore = ReturnType<typeof launchStore>;

export function launchStore(connection: Connection) {
  const logins = connection.collection<Login>('logins');
  const pendings = connection.collection<Pending>('pendinglaunches');
  const keys = connection.collection<ToolKey>('toolkeys');

  return {
    async prepare(): Promise<void> {
      await logins.createIndex({ createdAt: 1 }, { expireAfterSeconds: LOGIN_LIFETIME });
      await pendings.createIndex({ createdAt: 1 }, { expireAfterSeconds: PENDING_LIFETIME });
      await keys.createIndex({ issuer: 1, clientId: 1 });
    },

    async keepLogin(login: Login): Promise<void> {
      await logins.insertOne(login);
    },

    /** The login of this state, once: of any number of takers at the same moment, one gets it. */
    takeLogin(state: string): Promise<Login | null> {
      return logins.findOneAndDelete({ _id: state, createdAt: younger(LOGIN_LIFETIME) });
    },

    async keepPending(pending: Pending): Promise<void> {
      await pendings.insertOne(pending);
    },

    pending(code: string): Promise<Pending | null> {
      return pendings.findOne({ _id: code, createdAt: younger(PENDING_LIFETIME) });
    },

    /** True for the one confirm that is to open the session. */
    async claim(code: string): Promise<boolean> {
      const late = new Date(Date.now() - CLAIM_LIFETIME);
      const { modifiedCount } = await pendings.updateOne(
        { _id: code, answer: null, $or: [{ claimedAt: null }, { claimedAt: { $lt: late } }] },
        { $set: { claimedAt: new Date() } },
      );
      return modifiedCount === 1;
    },

    async unclaim(code: string): Promise<void> {
      await pendings.updateOne({ _id: code, answer: null }, { $set: { claimedAt: null } });
    },

    async answer(code: string, answer: string): Promise<void> {
      await pendings.updateOne({ _id: code }, { $set: { answer } });
    },

    async dropPending(code: string): Promise<void> {
      await pendings.deleteOne({ _id: code });
    },

    async keepKey(key: Omit<ToolKey, '_id'>): Promise<void> {
      const _id = `${key.half}:${key.kid}`;
      await keys.replaceOne({ _id }, key, { upsert: true });
    },

    key(half: ToolKey['half'], kid: string): Promise<ToolKey | null> {
      return keys.findOne({ _id: `${half}:${kid}` });
    },

    publicKeys(): Promise<ToolKey[]> {
      return keys.find({ half: 'public' }).sort({ _id: 1 }).toArray();
    },

    async dropKey(half: ToolKey['half'], kid: string): Promise<void> {
      await keys.deleteOne({ _id: `${half}:${kid}` });
    },
  };
}

/** The database sweeps only once a minute; what is too old is not found even before. */
function younger(seconds: number): { $gt: Date } {
  return { $gt: new Date(Date.now() - seconds * 1000) };
}
