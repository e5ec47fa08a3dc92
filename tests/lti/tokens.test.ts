import { createPublicKey, generateKeyPairSync } from 'node:crypto';
import { jwtVerify } from 'jose';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { createOutbound, type Outbound } from '../../server/lti/outbound.ts';
import { seal, unseal } from '../../server/lti/seal.ts';
import { createTokens } from '../../server/lti/tokens.ts';
import { platformStore } from '../../server/platforms/store.ts';
import { databaseForFile } from '../support/database.ts';
import { openPlatform, type TestPlatform } from '../support/platform.ts';

const AGS = 'https://purl.imsglobal.org/spec/lti-ags/scope';
const SCORE = `${AGS}/score`;
const RESULT = `${AGS}/result.readonly`;

const database = databaseForFile();
const keys = generateKeyPairSync('rsa', { modulusLength: 2048 });
const pem = keys.privateKey.export({ type: 'pkcs1', format: 'pem' }).toString();
let outbound: Outbound;
let platform: TestPlatform;
let registration: string;
let now: number;

beforeAll(() => {
  outbound = createOutbound({ production: false });
});
afterAll(() => outbound.close());
beforeEach(async () => {
  now = 1_800_000_000_000;
  platform = await openPlatform('https://moodle.example', crypto.randomUUID());
  const platforms = platformStore(database().connection);
  const { tokenUrl } = platform;
  await platforms.save(platform, { tokenUrl, kid: 'our-key', status: 'active' });
  registration = (await platforms.byIssuer(platform.issuer, platform.clientId))[0]?.id ?? '';
  return () => platform.close();
});

function tokens(privateKey = async () => pem) {
  const platforms = platformStore(database().connection);
  const provider = { privateKey };
  return createTokens({ platforms, provider, outbound, clock: () => now });
}

describe('the request (Security Framework 4.1)', () => {
  test('is signed with our key, for the token address, once and for a short time', async () => {
    const ask = tokens();
    await ask(registration, [SCORE]);
    await ask(registration, [RESULT]);
    const [form, second] = platform.asked;
    expect(form).toMatchObject({
      grant_type: 'client_credentials',
      client_assertion_type: 'urn:ietf:params:oauth:client-assertion-type:jwt-bearer',
      scope: SCORE,
    });
    const { payload, protectedHeader } = await jwtVerify(
      form?.client_assertion ?? '',
      createPublicKey(keys.publicKey.export({ type: 'spki', format: 'pem' })),
      { audience: platform.tokenUrl, issuer: platform.clientId, subject: platform.clientId },
    );
    expect(protectedHeader).toMatchObject({ alg: 'RS256', kid: 'our-key' });
    expect(Number(payload.exp) - Number(payload.iat)).toBeLessThanOrEqual(300);
    expect(payload.jti).toMatch(/^[0-9a-f-]{36}$/);
    expect(second?.client_assertion).not.toBe(form?.client_assertion);
  });

  test('names the authorization server where it is another', async () => {
    const platforms = platformStore(database().connection);
    await platforms.save(platform, { authServer: 'https://auth.example/fixed' });
    await tokens()(registration, [SCORE]);
    const [, payload = ''] = (platform.asked[0]?.client_assertion ?? '').split('.');
    expect(JSON.parse(Buffer.from(payload, 'base64url').toString()).aud).toBe(
      'https://auth.example/fixed',
    );
  });
});

describe('a token is kept', () => {
  test('and one request serves all who wait', async () => {
    const ask = tokens();
    const answers = await Promise.all(Array.from({ length: 20 }, () => ask(registration, [SCORE])));
    expect(answers).toEqual(
      Array(20).fill({ ok: true, value: { token: 'token-1', scopes: [SCORE] } }),
    );
    expect(platform.asked).toHaveLength(1);
  });

  test('for the same scopes in any order', async () => {
    const ask = tokens();
    await ask(registration, [SCORE, RESULT]);
    await ask(registration, [RESULT, SCORE]);
    expect(platform.asked).toHaveLength(1);
    await ask(registration, [SCORE]);
    expect(platform.asked).toHaveLength(2);
  });

  test('until a minute before it ends', async () => {
    const ask = tokens();
    await ask(registration, [SCORE]);
    now += 3_539_000;
    expect(await ask(registration, [SCORE])).toMatchObject({ value: { token: 'token-1' } });
    now += 1_000;
    expect(await ask(registration, [SCORE])).toMatchObject({ value: { token: 'token-2' } });
  });

  test('unless one that was not used yet is wanted', async () => {
    const ask = tokens();
    await ask(registration, [SCORE]);
    const renewed = await ask(registration, [SCORE], { renew: true });
    expect(renewed).toMatchObject({ value: { token: 'token-2' } });
    expect(await ask(registration, [SCORE])).toMatchObject({ value: { token: 'token-2' } });
  });
});

describe('answers of platforms', () => {
  const answered = (status: number, body: object | string) => {
    platform.answerToken = () => ({
      status,
      body: typeof body === 'string' ? body : JSON.stringify(body),
    });
    return tokens()(registration, [SCORE, RESULT]);
  };

  test('the scopes that were granted are told, not those that were asked for', async () => {
    const answer = await answered(200, { access_token: 't', expires_in: 60, scope: RESULT });
    expect(answer).toEqual({ ok: true, value: { token: 't', scopes: [RESULT] } });
  });

  test('without a word on scopes, those asked for are granted (RFC 6749 5.1)', async () => {
    const answer = await answered(200, { access_token: 't' });
    expect(answer).toMatchObject({ value: { scopes: [SCORE, RESULT] } });
  });

  test.each<[string, number, object | string, object]>([
    ['none of the scopes', 400, { error: 'invalid_scope' }, { code: 'scopeRefused' }],
    ['other scopes only', 200, { access_token: 't', scope: 'x' }, { code: 'scopeRefused' }],
    [
      'not us',
      400,
      { error: 'invalid_client' },
      { code: 'tokenRefused', reason: 'invalid_client' },
    ],
    [
      'a text that is no JSON, as Moodle sends for an unknown key',
      400,
      '{ "error" : ""kid" invalid" }',
      { code: 'tokenRefused', reason: 'status 400' },
    ],
    ['a fault of its own', 503, 'down', { code: 'tokenUnavailable', reason: 'status 503' }],
    ['no token', 200, {}, { code: 'tokenUnavailable', reason: 'no token' }],
    ['a list', 200, [], { code: 'tokenUnavailable' }],
    ['null', 200, 'null', { code: 'tokenUnavailable' }],
  ])('%s', async (_name, status, body, fault) => {
    expect(await answered(status, body)).toMatchObject({ ok: false, fault });
  });

  test('a refusal is not kept', async () => {
    const ask = tokens();
    const good = platform.answerToken;
    platform.answerToken = () => ({ status: 500, body: '' });
    expect((await ask(registration, [SCORE])).ok).toBe(false);
    platform.answerToken = good;
    expect((await ask(registration, [SCORE])).ok).toBe(true);
  });
});

test('no token with a key that another secret sealed, and it says so', async () => {
  const ask = tokens(async () => unseal(seal(pem, 'the secret before'), 'the secret now'));
  expect(await ask(registration, [SCORE])).toMatchObject({ fault: { code: 'keySealed' } });
  expect(platform.asked).toHaveLength(0);
});

test('no token for a platform that is suspended or unknown', async () => {
  const ask = tokens();
  expect(await ask('nobody', [SCORE])).toMatchObject({ fault: { code: 'platformUnknown' } });
  await platformStore(database().connection).save(platform, { status: 'suspended' });
  expect(await ask(registration, [SCORE])).toMatchObject({ fault: { code: 'platformSuspended' } });
  expect(platform.asked).toHaveLength(0);
});
