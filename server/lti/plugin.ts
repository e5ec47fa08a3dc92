/**
 * What ltijs believes to be its database. Registrations and keys are kept with ours; of a launch
 * nothing is kept at all: its questions are answered from what the guard has just verified.
 */
import { AsyncLocalStorage } from 'node:async_hooks';
import type { DatabasePlugin, Query } from 'ltijs';
import type { Registration } from '../platforms/registration.ts';
import type { Platforms } from '../platforms/store.ts';
import type { Passed } from './guard.ts';
import { seal, unseal } from './seal.ts';
import type { LaunchStore, ToolKey } from './store.ts';

/** The launch that is being validated a second time in this chain of calls. */
export interface SecondLook {
  passed: Passed;
  /** ltijs may ask for the nonce once. */
  nonceSpent: boolean;
}

export const secondLook = new AsyncLocalStorage<SecondLook>();

/** Kinds of which nothing needs keeping: the session and all that a launch says are ours. */
const UNKEPT: readonly string[] = ['idtoken', 'contexttoken', 'state', 'nonce', 'accesstoken'];

export function createPlugin(platforms: Platforms, store: LaunchStore): DatabasePlugin {
  return {
    setup: async () => true,
    Close: async () => true,

    async Get(secret, kind, query = {}) {
      if (kind === 'nonce') return spendNonce(query.nonce) ? false : [query];
      if (kind === 'platform') return listOrFalse(await findPlatforms(platforms, query));
      if (kind === 'platformStatus') return [await platformStatus(platforms, String(query.id))];
      if (kind === 'publickey' || kind === 'privatekey')
        return findKey(store, kind, String(query.kid), secret);
      return false;
    },

    Insert: async (_secret, kind) => nothingToKeep(kind),

    async Replace(secret, kind, query, item, index = {}) {
      if (kind === 'platform') await platforms.save(clientOf(query), fieldsOf(item));
      else if (kind === 'publickey' || kind === 'privatekey')
        await store.keepKey(toolKey(kind, item, index, secret));
      else nothingToKeep(kind);
      return true;
    },

    async Modify(_secret, kind, query, changes) {
      if (kind !== 'platform') return nothingToKeep(kind);
      await platforms.save(clientOf(query), fieldsOf(changes));
      return true;
    },

    async Delete(kind, query) {
      if (kind === 'platform') await platforms.remove(clientOf(query));
      else if (kind === 'publickey' || kind === 'privatekey')
        await store.dropKey(HALF[kind], String(query.kid));
      else nothingToKeep(kind);
      return true;
    },
  };
}

const HALF = { publickey: 'public', privatekey: 'private' } as const;

/** A kind we know nothing of means that ltijs has changed: better an error than silence. */
function nothingToKeep(kind: string): true {
  if (!UNKEPT.includes(kind)) throw new Error(`ltijs keeps something new: ${kind}`);
  return true;
}

/** True once, for the nonce that the guard found bound to the state. */
function spendNonce(nonce: unknown): boolean {
  const look = secondLook.getStore();
  if (look === undefined || look.nonceSpent || look.passed.claims.nonce !== nonce) return false;
  look.nonceSpent = true;
  return true;
}

async function findPlatforms(platforms: Platforms, query: Query): Promise<Query[]> {
  const look = secondLook.getStore();
  if (look !== undefined) return underLook(look.passed, query);
  const found =
    query.kid === undefined
      ? await platforms.byIssuer(String(query.platformUrl), clientIdOf(query))
      : [await platforms.byKid(String(query.kid))].filter((one) => one !== null);
  return found.map((one) => asLtijs(one, { method: 'JWK_SET', key: one.jwksUrl }));
}

/** During a launch only its own registration exists, with the very key that verified it: no fetch. */
function underLook({ registration, key }: Passed, query: Query): Query[] {
  const same =
    query.platformUrl === registration.issuer && query.clientId === registration.clientId;
  return same ? [asLtijs(registration, { method: 'JWK_KEY', key: JSON.stringify(key.jwk) })] : [];
}

async function platformStatus(platforms: Platforms, kid: string): Promise<Query> {
  const registration = secondLook.getStore()?.passed.registration ?? (await platforms.byKid(kid));
  return { id: kid, active: registration?.status === 'active' };
}

async function findKey(
  store: LaunchStore,
  kind: keyof typeof HALF,
  kid: string,
  secret: string | false,
): Promise<Query[] | false> {
  const found = await store.key(HALF[kind], kid);
  if (found === null) return false;
  const sealed = kind === 'privatekey' && secret !== false;
  return [{ kid, key: sealed ? unseal(found.pem, secret) : found.pem }];
}

function toolKey(
  kind: keyof typeof HALF,
  item: Query,
  index: Query,
  secret: string | false,
): Omit<ToolKey, '_id'> {
  if (kind === 'privatekey' && secret === false) throw new Error('a private key without a secret');
  const pem = String(item.key);
  return {
    kid: String(item.kid),
    half: HALF[kind],
    issuer: String(index.platformUrl),
    clientId: String(index.clientId),
    pem: kind === 'privatekey' && secret !== false ? seal(pem, secret) : pem,
  };
}

function asLtijs(registration: Registration, authConfig: { method: string; key: string }): Query {
  return {
    platformName: registration.name,
    platformUrl: registration.issuer,
    clientId: registration.clientId,
    authEndpoint: registration.authUrl,
    accesstokenEndpoint: registration.tokenUrl,
    authorizationServer: registration.authServer ?? undefined,
    kid: registration.kid,
    authConfig,
  };
}

function fieldsOf(item: Query): Partial<Registration> {
  const { platformName, authEndpoint, accesstokenEndpoint, kid } = item;
  const { authConfig, authorizationServer } = item as { authConfig?: { key?: unknown } } & Query;
  const named = {
    name: platformName,
    authUrl: authEndpoint,
    tokenUrl: accesstokenEndpoint,
    jwksUrl: authConfig?.key,
    kid,
  };
  const given = Object.entries(named).filter(([, value]) => value !== undefined);
  return { ...Object.fromEntries(given), authServer: authServerOf(authorizationServer, item) };
}

/** ltijs fills in the token address where there is no server of another name. */
function authServerOf(server: unknown, item: Query): string | null {
  return typeof server === 'string' && server !== item.accesstokenEndpoint ? server : null;
}

function clientOf(query: Query): { issuer: string; clientId: string } {
  return { issuer: String(query.platformUrl), clientId: String(query.clientId) };
}

function clientIdOf(query: Query): string | undefined {
  return query.clientId === undefined ? undefined : String(query.clientId);
}

function listOrFalse(found: Query[]): Query[] | false {
  return found.length > 0 ? found : false;
}
