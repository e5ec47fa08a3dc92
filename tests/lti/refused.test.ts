import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { databaseForFile } from '../support/database.ts';
import {
  type Claims,
  LTI,
  MEMBERSHIP,
  openPlatform,
  recordedClaims,
  type TestPlatform,
  unsigned,
} from '../support/platform.ts';
import {
  arrive,
  claimsFor,
  type Landing,
  launch,
  login,
  openTool,
  type Tool,
  type Visit,
} from './support/tool.ts';

const database = databaseForFile();
let tool: Tool;
let platform: TestPlatform;
let other: TestPlatform;

beforeAll(async () => {
  [platform, other] = await Promise.all([
    openPlatform(),
    openPlatform('https://other.example', 'client-of-the-other'),
  ]);
  tool = await openTool(database().connection);
  await Promise.all([tool.register(platform), tool.register(other)]);
});
afterAll(async () => {
  await tool.close();
  await Promise.all([platform.close(), other.close()]);
});

/** Each refusal is a page with a code, a line with the same code, and nothing else. */
async function expectRefusal(page: Landing, code: string, sessions: number) {
  expect(page.refused).toBe(code);
  expect(page.boot).toBeNull();
  expect(page.status).toBeGreaterThanOrEqual(400);
  expect(page.headers.get('content-type')).toMatch(/^text\/html/);
  expect(page.headers.get('cache-control')).toBe('no-store');
  expect(page.headers.get('referrer-policy')).toBe('no-referrer');
  expect(page.headers.get('content-security-policy')).toContain("default-src 'none'");
  expect(page.html).toMatch(/<h1>.+<\/h1><p>.{30,}<\/p>/);
  const line = tool.lines.findLast((one) => one.code === code);
  expect(line).toMatchObject({ code, msg: 'launch refused' });
  expect(tool.admitted).toHaveLength(sessions);
  expect(await database().connection.collection('pendinglaunches').countDocuments()).toBe(0);
}

const now = () => Math.floor(Date.now() / 1000);
const without = (name: string) => ({ [name]: undefined });
const lti = (name: string, value: unknown) => ({ [`${LTI}/${name}`]: value });

describe('claims that a launch may not have (certification guide 6.1.1)', () => {
  test.each<[string, string, () => Claims]>([
    ['another LTI version', 'versionWrong', () => lti('version', '1.1.0')],
    ['no LTI version', 'versionWrong', () => lti('version', undefined)],
    [
      'none of the LTI claims',
      'versionWrong',
      () =>
        Object.fromEntries(
          Object.keys(recordedClaims('launch-student'))
            .filter((name) => name.startsWith('https:'))
            .concat(`${LTI}/version`)
            .map((name) => [name, undefined]),
        ),
    ],
    [
      'a message type that is not known',
      'messageUnknown',
      () => lti('message_type', 'LtiNewRequest'),
    ],
    ['no message type', 'messageUnknown', () => lti('message_type', undefined)],
    ['no roles', 'rolesMissing', () => lti('roles', undefined)],
    ['roles that are no list', 'rolesMissing', () => lti('roles', `${MEMBERSHIP}#Instructor`)],
    ['no deployment', 'deploymentMissing', () => lti('deployment_id', undefined)],
    ['an empty deployment', 'deploymentMissing', () => lti('deployment_id', '')],
    [
      'a deployment of 256 characters',
      'deploymentMissing',
      () => lti('deployment_id', '1'.repeat(256)),
    ],
    ['a deployment that nobody approved', 'deploymentUnknown', () => lti('deployment_id', '2')],
    ['no resource link', 'resourceLinkMissing', () => lti('resource_link', undefined)],
    [
      'a resource link without id',
      'resourceLinkMissing',
      () => lti('resource_link', { title: 'x' }),
    ],
    [
      'a resource link with a number as id',
      'resourceLinkMissing',
      () => lti('resource_link', { id: 1 }),
    ],
    ['no target', 'targetWrong', () => lti('target_link_uri', undefined)],
    [
      'a target elsewhere',
      'targetWrong',
      () => lti('target_link_uri', 'https://evil.example/launch'),
    ],
    [
      'a target that only begins like ours',
      'targetWrong',
      () => lti('target_link_uri', 'https://placeweave.example.evil.example/'),
    ],
    ['an empty subject', 'subjectWrong', () => ({ sub: '' })],
    ['a subject of 256 characters', 'subjectWrong', () => ({ sub: 'a'.repeat(256) })],
    ['a subject that is a number', 'subjectWrong', () => ({ sub: 4 })],
    ['a subject that is an object', 'subjectWrong', () => ({ sub: { $ne: null } })],
    ['no expiry', 'expired', () => without('exp')],
    ['an expiry in the past', 'expired', () => ({ exp: now() - 61, iat: now() - 121 })],
    ['an expiry that is a text', 'expired', () => ({ exp: '9999999999' })],
    ['no time of issue', 'issuedWrong', () => without('iat')],
    ['a time of issue to come', 'issuedWrong', () => ({ iat: now() + 90, exp: now() + 150 })],
    ['a time of issue long ago', 'issuedWrong', () => ({ iat: now() - 400 })],
    ['a beginning to come', 'notYetValid', () => ({ nbf: now() + 90 })],
    ['another issuer', 'issuerWrong', () => ({ iss: 'https://other.example' })],
    ['no issuer', 'issuerWrong', () => without('iss')],
    ['another audience', 'audienceWrong', () => ({ aud: 'client-of-the-other' })],
    ['no audience', 'audienceWrong', () => without('aud')],
    [
      'a second audience and no authorized party',
      'audienceWrong',
      () => ({ aud: [platform.clientId, 'https://evil.example'] }),
    ],
    ['another authorized party', 'partyWrong', () => ({ azp: 'client-of-the-other' })],
    ['no nonce', 'nonceWrong', () => without('nonce')],
    ['a nonce that was never issued', 'nonceWrong', () => ({ nonce: 'ab'.repeat(25) })],
    ['a nonce that is an object', 'nonceWrong', () => ({ nonce: { $ne: '' } })],
  ])('%s → %s', async (_name, code, changes) => {
    const sessions = tool.admitted.length;
    const { page } = await arrive(tool, platform, changes());
    await expectRefusal(page, code, sessions);
  });

  test('a deep linking request → a page that says it is not offered', async () => {
    const { page } = await arrive(tool, platform, {}, recordedClaims('launch-deep-linking'));
    await expectRefusal(page, 'deepLinkingNotOffered', tool.admitted.length);
  });
});

describe('signatures that a launch may not have', () => {
  type Forge = (claims: Claims) => Promise<string>;

  test.each<[string, string, Forge]>([
    ['no key id', 'keyUnnamed', (claims) => platform.sign(claims, { kid: undefined })],
    ['the id of no key', 'keyUnknown', (claims) => platform.sign(claims, { kid: 'nobody' })],
    [
      'another key under a right id',
      'signatureWrong',
      (claims) => platform.sign(claims, {}, other.key.sign),
    ],
    ['no signature', 'algorithmRefused', async (claims) => unsigned(claims)],
    [
      'a changed payload',
      'signatureWrong',
      async (claims) => {
        const [head, , signature] = (await platform.sign(claims)).split('.');
        const payload = Buffer.from(JSON.stringify({ ...claims, sub: '3' })).toString('base64url');
        return `${head}.${payload}.${signature}`;
      },
    ],
    [
      'a signature that is cut off',
      'signatureWrong',
      async (claims) => (await platform.sign(claims)).slice(0, -20),
    ],
    [
      'an extension we must understand',
      'signatureWrong',
      async (claims) => {
        const [head = '', payload, signature] = (await platform.sign(claims)).split('.');
        const header = JSON.parse(Buffer.from(head, 'base64url').toString());
        const critical = Buffer.from(JSON.stringify({ ...header, crit: ['x'], x: 1 })).toString(
          'base64url',
        );
        return `${critical}.${payload}.${signature}`;
      },
    ],
    ['words instead of a token', 'tokenMalformed', async () => 'this is no token'],
    ['an empty header', 'tokenMalformed', async () => '..'],
  ])('%s → %s', async (_name, code, forge) => {
    const visit = await login(tool, platform);
    const token = await forge(claimsFor(platform, visit));
    const sessions = tool.admitted.length;
    await expectRefusal(
      await launch(tool, { id_token: token, state: visit.state }),
      code,
      sessions,
    );
  });

  test.each(['RS384', 'RS512', 'PS256'])('%s → algorithmRefused', async (alg) => {
    const { generateKeyPair, SignJWT } = await import('jose');
    const { privateKey } = await generateKeyPair(alg);
    const visit = await login(tool, platform);
    const token = await new SignJWT(claimsFor(platform, visit))
      .setProtectedHeader({ alg, kid: platform.key.kid })
      .sign(privateKey);
    const page = await launch(tool, { id_token: token, state: visit.state });
    await expectRefusal(page, 'algorithmRefused', tool.admitted.length);
  });

  test('the public key used as a shared secret → algorithmRefused', async () => {
    const { SignJWT } = await import('jose');
    const visit = await login(tool, platform);
    const token = await new SignJWT(claimsFor(platform, visit))
      .setProtectedHeader({ alg: 'HS256', kid: platform.key.kid })
      .sign(Buffer.from(String(platform.key.jwk.n)));
    const page = await launch(tool, { id_token: token, state: visit.state });
    await expectRefusal(page, 'algorithmRefused', tool.admitted.length);
  });

  test('a payload that is no object → tokenMalformed', async () => {
    const { CompactSign } = await import('jose');
    const visit = await login(tool, platform);
    const token = await new CompactSign(Buffer.from('["roles"]'))
      .setProtectedHeader({ alg: 'RS256', kid: platform.key.kid })
      .sign(platform.key.sign);
    const page = await launch(tool, { id_token: token, state: visit.state });
    await expectRefusal(page, 'tokenMalformed', tool.admitted.length);
  });
});

describe('launches that belong to no login of ours', () => {
  const good = async (visit: Visit, from = platform) => from.sign(claimsFor(from, visit));

  test('a state that was never issued → loginUnknown', async () => {
    const visit = await login(tool, platform);
    const page = await launch(tool, { id_token: await good(visit), state: 'a'.repeat(50) });
    await expectRefusal(page, 'loginUnknown', tool.admitted.length);
  });

  test('a login older than ten minutes → loginUnknown', async () => {
    const visit = await login(tool, platform);
    const old = new Date(Date.now() - 601_000);
    await database()
      .connection.collection('logins')
      .updateMany({}, { $set: { createdAt: old } });
    const page = await launch(tool, { id_token: await good(visit), state: visit.state });
    await expectRefusal(page, 'loginUnknown', tool.admitted.length);
  });

  test('the nonce of another login → nonceWrong', async () => {
    const [mine, theirs] = [await login(tool, platform), await login(tool, platform)];
    const page = await launch(tool, { id_token: await good(theirs), state: mine.state });
    await expectRefusal(page, 'nonceWrong', tool.admitted.length);
  });

  test('a good token of another platform → keyUnknown or wrong signature', async () => {
    const visit = await login(tool, platform);
    const token = await good(visit, other);
    const page = await launch(tool, { id_token: token, state: visit.state });
    await expectRefusal(page, 'signatureWrong', tool.admitted.length);
  });

  test('a token that another platform signed in the name of this one → signatureWrong', async () => {
    const visit = await login(tool, platform);
    const token = await other.sign(claimsFor(platform, visit));
    const page = await launch(tool, { id_token: token, state: visit.state });
    await expectRefusal(page, 'signatureWrong', tool.admitted.length);
  });

  test('a token for the other platform at a login of the other, with keys of this one → signatureWrong', async () => {
    const visit = await login(tool, other);
    const token = await platform.sign(claimsFor(other, visit));
    const page = await launch(tool, { id_token: token, state: visit.state });
    await expectRefusal(page, 'signatureWrong', tool.admitted.length);
  });

  test('a platform that was suspended after the login → platformSuspended', async () => {
    const visit = await login(tool, other);
    await tool.platforms.save(other, { status: 'suspended' });
    const page = await launch(tool, { id_token: await good(visit, other), state: visit.state });
    await tool.platforms.save(other, { status: 'active' });
    await expectRefusal(page, 'platformSuspended', tool.admitted.length);
  });

  test('word from the platform that it refused → platformDeclined, and the state is spent', async () => {
    const visit = await login(tool, platform);
    const page = await launch(tool, { error: 'access_denied', state: visit.state });
    await expectRefusal(page, 'platformDeclined', tool.admitted.length);
    expect(tool.lines.at(-1)).toMatchObject({ reason: 'access_denied' });
    const late = await launch(tool, { id_token: await good(visit), state: visit.state });
    await expectRefusal(late, 'loginUnknown', tool.admitted.length);
  });
});

test('a form that is too large → malformed', async () => {
  const { page } = await arrive(tool, platform, { padding: 'x'.repeat(100_000) });
  await expectRefusal(page, 'malformed', tool.admitted.length);
});

test('a key set that cannot be read → keysUnreachable, and it is nobody’s fault', async () => {
  const away = await openPlatform('https://away.example');
  await tool.register(away, { jwksUrl: 'http://127.0.0.1:9/keys' });
  const { page } = await arrive(tool, away);
  await away.close();
  await expectRefusal(page, 'keysUnreachable', tool.admitted.length);
  expect(page.status).toBe(503);
});

test('no line of the log holds a name, an e-mail address, a token, a state or a subject', async () => {
  const visit = await login(tool, platform);
  const claims = claimsFor(platform, visit, { sub: 'subject-77', aud: 'wrong' });
  const token = await platform.sign(claims);
  await launch(tool, { id_token: token, state: visit.state });
  expect(tool.logged()).not.toMatch(/Robin|Field|student1|subject-77|sesskey/);
  for (const secret of [token, visit.state, visit.nonce, visit.cookie.split('=')[1] ?? ''])
    expect(tool.logged()).not.toContain(secret);
});
