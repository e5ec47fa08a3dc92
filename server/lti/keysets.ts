/**
 * The platforms' public keys: read once, kept, and read again only when they are old or a token names
 * a key that is not among them.
 */
import { type CryptoKey, importJWK, type JWK } from 'jose';
import type { Outbound } from './outbound.ts';
import { type Checked, refused } from './refusals.ts';

/** One usable key: for our own check, and as the plain JWK for the second one. */
export interface PlatformKey {
  key: CryptoKey;
  jwk: JWK;
}

export interface KeySets {
  /** The key `kid` of the set at `address`. */
  find(address: string, kid: string): Promise<Checked<PlatformKey>>;
}

type Keys = ReadonlyMap<string, PlatformKey>;

interface Kept {
  keys: Keys;
  readAt: number;
  /** When an unknown key last made us read again. */
  askedAt: number;
}

/** A key set is read again after this, in ms; if that fails, the old one serves on for a day. */
const LIFETIME = 3_600_000;
const STALE_LIFETIME = 24 * LIFETIME;
/** Unknown keys make us read a set at most this often, in ms: a forged token must not make us a burden. */
const PAUSE = 10_000;
/** RFC 7518 §3.3: RS256 keys have at least 2048 bits. */
const SMALLEST_MODULUS = 2048 / 8;

export function createKeySets(outbound: Outbound, clock: () => number = Date.now): KeySets {
  const kept = new Map<string, Kept>();
  const reading = new Map<string, Promise<Checked<Keys>>>();

  /** One request at a time for one address, however many launches wait for it. */
  function read(address: string): Promise<Checked<Keys>> {
    const under = reading.get(address);
    if (under !== undefined) return under;
    const started = fetchKeys(outbound, address).finally(() => reading.delete(address));
    reading.set(address, started);
    return started;
  }

  async function refresh(address: string, askedAt: number): Promise<Checked<Keys>> {
    const answer = await read(address);
    const old = kept.get(address);
    if (answer.ok) kept.set(address, { keys: answer.value, readAt: clock(), askedAt });
    else if (old !== undefined && clock() - old.readAt < STALE_LIFETIME) {
      kept.set(address, { ...old, askedAt });
      return { ok: true, value: old.keys };
    }
    return answer;
  }

  return {
    async find(address, kid) {
      const known = kept.get(address);
      const fresh = known !== undefined && clock() - known.readAt < LIFETIME;
      const held = fresh ? known.keys.get(kid) : undefined;
      if (held !== undefined) return { ok: true, value: held };
      if (fresh && clock() - known.askedAt < PAUSE) return refused('keyUnknown');
      const answer = await refresh(address, fresh ? clock() : 0);
      if (!answer.ok) return answer;
      const found = answer.value.get(kid);
      return found === undefined ? refused('keyUnknown') : { ok: true, value: found };
    },
  };
}

async function fetchKeys(outbound: Outbound, address: string): Promise<Checked<Keys>> {
  const answer = await outbound.send({ url: address, headers: { accept: 'application/json' } });
  if (!answer.ok) return refused('keysUnreachable', { reason: answer.fault.code });
  if (answer.value.status !== 200)
    return refused('keysUnreachable', { reason: `status ${answer.value.status}` });
  const listed = listedKeys(answer.value.body);
  if (listed === null) return refused('keysUnreachable', { reason: 'not a key set' });
  return { ok: true, value: await usable(listed) };
}

function listedKeys(body: string): unknown[] | null {
  try {
    const keys = JSON.parse(body)?.keys;
    return Array.isArray(keys) ? keys : null;
  } catch {
    return null;
  }
}

async function usable(listed: readonly unknown[]): Promise<Keys> {
  const keys = await Promise.all(listed.filter(isSigningKey).map(imported));
  return new Map(keys.filter((one) => one !== null).map((one) => [String(one.jwk.kid), one]));
}

function isSigningKey(value: unknown): value is JWK & { n: string; e: string; kid: string } {
  const jwk = (value ?? {}) as JWK;
  return (
    jwk.kty === 'RSA' &&
    typeof jwk.kid === 'string' &&
    typeof jwk.n === 'string' &&
    typeof jwk.e === 'string' &&
    (jwk.use === undefined || jwk.use === 'sig') &&
    (jwk.alg === undefined || jwk.alg === 'RS256') &&
    Buffer.from(jwk.n, 'base64url').length >= SMALLEST_MODULUS
  );
}

/** Only the public members are taken, whatever else the platform published. */
async function imported({ n, e, kid }: JWK & { n: string; e: string; kid: string }) {
  const jwk = { kty: 'RSA', n, e, kid, alg: 'RS256', use: 'sig' };
  try {
    return { key: (await importJWK(jwk, 'RS256')) as CryptoKey, jwk };
  } catch {
    return null;
  }
}
