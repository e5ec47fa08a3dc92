import { type CryptoKey, importJWK } from 'jose';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { digest } from '../../server/lti/digest.ts';
import type { Passed } from '../../server/lti/guard.ts';
import { createPlugin } from '../../server/lti/plugin.ts';
import { createProvider, needsNoSecondCheck, type Provider } from '../../server/lti/provider.ts';
import { readLaunch } from '../../server/lti/reading.ts';
import { launchStore } from '../../server/lti/store.ts';
import { platformStore } from '../../server/platforms/store.ts';
import { databaseForFile } from '../support/database.ts';
import { type Claims, openPlatform, type TestPlatform } from '../support/platform.ts';
import { claimsFor, SECRET, type Visit } from './support/tool.ts';

const database = databaseForFile();
const STATE = 'ab'.repeat(25);
let platform: TestPlatform;
let provider: Provider;

beforeAll(async () => {
  const { connection } = database();
  const plugin = createPlugin(platformStore(connection), launchStore(connection));
  platform = await openPlatform();
  provider = await createProvider(SECRET, plugin);
});
afterAll(() => platform.close());

/** A launch as the guard would hand it on, with these parts replaced. */
async function passed(changes: Partial<Passed> = {}): Promise<{ token: string; passed: Passed }> {
  const claims = claimsFor(platform, { nonce: 'a nonce' } as Visit);
  const launch = readLaunch(claims, 'registration-1');
  if (!launch.ok) throw new Error('not a launch');
  const { jwk } = platform.key;
  const registration = {
    ...{ id: 'registration-1', name: 'x', kid: 'our-key', status: 'active' as const },
    ...{ issuer: platform.issuer, clientId: platform.clientId, deployments: ['1'] },
    ...{ authUrl: 'https://a.example', tokenUrl: 'https://a.example', jwksUrl: platform.jwksUrl },
    ...{ authServer: null, frameOrigins: [] },
  };
  const login = {
    ...{ _id: digest(STATE), nonce: digest('a nonce'), proof: '', registration: registration.id },
    ...{ storage: null, initiation: {}, createdAt: new Date() },
  };
  const key = { jwk, key: (await importJWK(jwk, 'RS256')) as CryptoKey };
  const whole: Passed = { launch: launch.value, login, registration, claims, key, ...changes };
  return { token: await platform.sign(claims), passed: whole };
}

const check = async (changes: Partial<Passed> = {}) =>
  provider.check({ ...(await passed(changes)), state: STATE });

describe('the second validation by ltijs', () => {
  test('agrees with a launch that passed the guard, and fetches nothing', async () => {
    expect(await check()).toEqual({ ok: true, value: true });
    expect(platform.reads).toBe(0);
  });

  test('refuses a launch for whose state nobody vouches', async () => {
    const { registration } = (await passed()).passed;
    expect(await check({ registration: { ...registration, issuer: '' } })).toEqual({
      ok: false,
      refusal: { code: 'secondCheck', reason: 'MISSING_VALIDATION_COOKIE' },
    });
  });

  test('refuses a launch of another issuer than the one vouched for', async () => {
    const { registration } = (await passed()).passed;
    const other = { ...registration, issuer: 'https://other.example' };
    expect(await check({ registration: other })).toMatchObject({
      refusal: { reason: 'ISS_CLAIM_DOES_NOT_MATCH' },
    });
  });

  test('refuses a nonce that the guard did not find bound to the state', async () => {
    const { claims } = (await passed()).passed;
    expect(await check({ claims: { ...claims, nonce: 'another' } })).toMatchObject({
      refusal: { reason: 'NONCE_ALREADY_RECEIVED' },
    });
  });

  test('refuses a signature by another key than the guard’s', async () => {
    const other = await platform.newKey('platform-kid-1');
    const key = { jwk: other.jwk, key: (await importJWK(other.jwk, 'RS256')) as CryptoKey };
    expect(await check({ key })).toMatchObject({ refusal: { reason: 'invalid signature' } });
  });

  test('refuses a platform that was suspended meanwhile', async () => {
    const { registration } = (await passed()).passed;
    expect(await check({ registration: { ...registration, status: 'suspended' } })).toMatchObject({
      refusal: { reason: 'PLATFORM_NOT_ACTIVATED' },
    });
  });

  test('refuses when both readings do not name the same person', async () => {
    const { launch } = (await passed()).passed;
    expect(await check({ launch: { ...launch, subject: '5' } })).toMatchObject({
      refusal: { reason: 'two readings' },
    });
  });

  test('holds its own for a hundred launches at once', async () => {
    const outcomes = await Promise.all(Array.from({ length: 100 }, () => check()));
    expect(outcomes.every(({ ok }) => ok)).toBe(true);
  });
});

describe('what ends with the guard, because ltijs cannot take it', () => {
  const now = 1_800_000_000;
  const needsNone = async (changes: Partial<Passed>) =>
    needsNoSecondCheck((await passed(changes)).passed, now);
  const claims = (more: Claims = {}) => ({ claims: { exp: now + 60, ...more } });

  test('an ordinary launch goes through it', async () => {
    expect(await needsNone(claims())).toBe(false);
  });

  test.each([
    ['is within our patience after its end', { exp: now - 30 }],
    ['begins within our patience', { nbf: now + 30 }],
  ])('a token that %s does not', async (_name, more) => {
    expect(await needsNone(claims(more))).toBe(true);
  });

  test('a review and an anonymous launch do not', async () => {
    const { launch } = (await passed()).passed;
    expect(await needsNone({ ...claims(), launch: { ...launch, message: 'review' } })).toBe(true);
    expect(await needsNone({ ...claims(), launch: { ...launch, subject: null } })).toBe(true);
  });
});
