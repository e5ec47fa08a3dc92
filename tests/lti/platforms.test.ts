import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createRegistrar, type Registrar, valuesForPlatform } from '../../server/lti/registrar.ts';
import { readPlatform } from '../../server/platforms/file.ts';
import { framingOrigins, originOf } from '../../server/platforms/registration.ts';
import { type Platforms, platformStore } from '../../server/platforms/store.ts';
import { databaseForFile } from '../support/database.ts';
import { openPlatform, type TestPlatform } from '../support/platform.ts';
import { arrive, openTool, SECRET, type Tool } from './support/tool.ts';

const FILE = {
  name: 'Harbour Lane School',
  issuer: 'https://learn.example',
  clientId: 'client-1',
  authUrl: 'https://learn.example/auth',
  tokenUrl: 'https://learn.example/token',
  jwksUrl: 'https://learn.example/keys',
  deployments: ['1'],
};

const file = (changes: object = {}) => {
  const read = readPlatform({ ...FILE, ...changes }, { production: false });
  if (!read.ok) throw new Error(read.complaints.join('\n'));
  return read.value;
};

describe('the file of a platform', () => {
  test('fills in what may be left out', () => {
    expect(file()).toEqual({ ...FILE, authServer: null, frameOrigins: [] });
  });

  test.each<[string, object, string]>([
    ['nothing but a name', { issuer: undefined }, 'issuer is missing'],
    [
      'an address that is none',
      { authUrl: 'learn' },
      'authUrl must be an http or https address without a password',
    ],
    [
      'a password in an address',
      { jwksUrl: 'https://a:b@c.example' },
      'jwksUrl must be an http or https address without a password',
    ],
    ['no deployment', { deployments: [] }, 'deployments must name at least one deployment'],
    [
      'any deployment',
      { deployments: ['*'] },
      'deployments must name each deployment; there is none for all',
    ],
    ['a deployment that is a number', { deployments: [1] }, 'deployments.0 must be a text'],
    [
      'an origin with a path',
      { frameOrigins: ['https://a.example/x'] },
      'frameOrigins.0 must be like https://learn.example.org',
    ],
    ['an entry we do not know', { keysetUrl: 'x' }, 'keysetUrl is not known here'],
  ])('says what is wrong with %s', (_name, changes, complaint) => {
    const read = readPlatform({ ...FILE, ...changes }, { production: false });
    expect(read.ok ? [] : read.complaints).toEqual([complaint]);
  });

  test.each([null, [], 'text', 4])('is not %j', (written) => {
    expect(readPlatform(written, { production: false }).ok).toBe(false);
  });

  test('names each address that would be called without encryption in production', () => {
    const plain = {
      ...FILE,
      authUrl: 'http://learn.example/auth',
      jwksUrl: 'http://learn.example/k',
    };
    expect(readPlatform(plain, { production: false }).ok).toBe(true);
    expect(readPlatform(plain, { production: true })).toEqual({
      ok: false,
      complaints: [
        'authUrl must be an https address in production',
        'jwksUrl must be an https address in production',
      ],
    });
  });
});

describe('registering', () => {
  const database = databaseForFile();
  let registrar: Registrar;
  let platforms: Platforms;

  beforeAll(async () => {
    const { connection } = database();
    platforms = platformStore(connection);
    registrar = await createRegistrar({ connection, platforms, secret: SECRET });
  });

  test('makes one registration with one key pair of 4096 bits, however often it is asked', async () => {
    const first = await registrar.register(file());
    const again = await registrar.register(file({ name: 'Renamed', deployments: ['1', '2'] }));
    expect(again).toMatchObject({
      id: first.id,
      kid: first.kid,
      name: 'Renamed',
      deployments: ['1', '2'],
    });
    const { keys } = await registrar.keySet();
    const own = keys.filter(({ kid }) => kid === first.kid);
    expect(own).toEqual([
      { kty: 'RSA', e: 'AQAB', n: expect.any(String), kid: first.kid, alg: 'RS256', use: 'sig' },
    ]);
    expect(Buffer.from(own[0]?.n ?? '', 'base64url')).toHaveLength(512);
    expect(await platforms.list()).toHaveLength(1);
  });

  test('takes an authorization server, and takes it away again', async () => {
    const fixed = await registrar.register(file({ authServer: 'https://fixed.example' }));
    expect(fixed.authServer).toBe('https://fixed.example');
    expect((await registrar.register(file())).authServer).toBeNull();
  });

  test('a deployment is approved one at a time', async () => {
    const { id } = await registrar.register(file());
    expect(await platforms.approve(id, '7')).toBe(true);
    expect((await platforms.byId(id))?.deployments).toContain('7');
    expect(await platforms.approve('nobody', '7')).toBe(false);
  });

  test('prints what to enter at the platform', () => {
    expect(valuesForPlatform('https://mat.example')).toEqual({
      loginUrl: 'https://mat.example/lti/login',
      redirectUrl: 'https://mat.example/lti/launch',
      targetLinkUrl: 'https://mat.example/lti/launch',
      keySetUrl: 'https://mat.example/lti/keys',
    });
  });
});

describe('who may show our pages in a frame', () => {
  const database = databaseForFile();
  let tool: Tool;
  let platform: TestPlatform;
  beforeAll(async () => {
    platform = await openPlatform();
    tool = await openTool(database().connection);
    await tool.register(platform, { frameOrigins: ['https://content.example'] });
  });
  afterAll(async () => {
    await tool.close();
    await platform.close();
  });

  test('the platform itself, and the origins that were named', async () => {
    const { page } = await arrive(tool, platform);
    expect(page.headers.get('content-security-policy')).toMatch(
      /frame-ancestors 'self' https:\/\/moodle\.example https:\/\/content\.example$/,
    );
  });

  test('a page of no known platform: every registered one', async () => {
    expect(await tool.platforms.allFramingOrigins()).toEqual([
      'https://moodle.example',
      'https://content.example',
    ]);
  });

  test('an issuer that is no address adds nothing', () => {
    const registration = { issuer: 'urn:x', authUrl: 'https://sso.example/a', frameOrigins: [] };
    expect(framingOrigins(registration as unknown as Parameters<typeof framingOrigins>[0])).toEqual(
      ['https://sso.example'],
    );
  });

  test.each([
    'https://*',
    'https://a;script-src',
    'https://a,b',
    'javascript:alert(1)',
    'x',
    'data:,',
  ])('%s is no origin', (address) => {
    expect(originOf(address)).toEqual([]);
  });
});
