import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { createKeySets } from '../../server/lti/keysets.ts';
import { createOutbound, type Outbound } from '../../server/lti/outbound.ts';
import { openPlatform, type TestPlatform } from '../support/platform.ts';

const MINUTE = 60_000;
let outbound: Outbound;
let platform: TestPlatform;
let now: number;

beforeAll(async () => {
  outbound = createOutbound({ production: false });
});
beforeEach(async () => {
  platform = await openPlatform();
  now = 1_800_000_000_000;
  return () => platform.close();
});
afterAll(() => outbound.close());

const keySets = () => createKeySets(outbound, () => now);
const find = (sets: ReturnType<typeof keySets>, kid = 'platform-kid-1') =>
  sets.find(platform.jwksUrl, kid);

describe('a key set is read', () => {
  test('once for any number of launches, even at the same moment', async () => {
    const sets = keySets();
    const found = await Promise.all(Array.from({ length: 51 }, () => find(sets)));
    expect(found.every(({ ok }) => ok)).toBe(true);
    expect(platform.reads).toBe(1);
  });

  test('again when a token names a new key, as after a change of keys', async () => {
    const sets = keySets();
    await find(sets);
    const next = await platform.newKey('platform-kid-2');
    platform.publish(platform.key.jwk, next.jwk);
    expect((await find(sets, 'platform-kid-2')).ok).toBe(true);
    expect((await find(sets)).ok).toBe(true);
    expect(platform.reads).toBe(2);
  });

  test('for unknown keys at most once in ten seconds', async () => {
    const sets = keySets();
    await find(sets);
    for (let n = 0; n < 20; n += 1)
      expect(await find(sets, `forged-${n}`)).toMatchObject({ refusal: { code: 'keyUnknown' } });
    expect(platform.reads).toBe(2);
    now += 10_000;
    await find(sets, 'forged');
    expect(platform.reads).toBe(3);
  });

  test('again after an hour, so that a withdrawn key ends', async () => {
    const sets = keySets();
    await find(sets);
    const next = await platform.newKey('platform-kid-2');
    platform.publish(next.jwk);
    now += 61 * MINUTE;
    expect(await find(sets)).toMatchObject({ refusal: { code: 'keyUnknown' } });
  });

  test('and serves on for a day while the platform is away', async () => {
    const sets = keySets();
    await find(sets);
    await platform.close();
    now += 61 * MINUTE;
    expect((await find(sets)).ok).toBe(true);
    now += 24 * 60 * MINUTE;
    expect(await find(sets)).toMatchObject({ refusal: { code: 'keysUnreachable' } });
  });
});

describe('keys that are never used', () => {
  test.each([
    ['for encryption', { use: 'enc' }],
    ['for another algorithm', { alg: 'RS512' }],
    ['of another kind', { kty: 'oct', k: 'c2VjcmV0' }],
    ['of less than 2048 bits', { n: Buffer.alloc(128, 255).toString('base64url') }],
    ['without a modulus', { n: undefined }],
  ])('%s', async (_name, change) => {
    platform.publish({ ...platform.key.jwk, ...change } as typeof platform.key.jwk);
    expect(await find(keySets())).toMatchObject({ refusal: { code: 'keyUnknown' } });
  });

  test('the private members that a platform published by mistake are not taken along', async () => {
    const found = await find(keySets());
    expect(found.ok && Object.keys(found.value.jwk).sort()).toEqual([
      'alg',
      'e',
      'kid',
      'kty',
      'n',
      'use',
    ]);
  });
});

test('an answer that is no key set is refused with its reason', async () => {
  const sets = keySets();
  expect(await sets.find(platform.tokenUrl, 'x')).toMatchObject({
    refusal: { code: 'keysUnreachable', reason: 'not a key set' },
  });
});
