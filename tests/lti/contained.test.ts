import { readdirSync, readFileSync } from 'node:fs';
import mongoose from 'mongoose';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { createPlugin } from '../../server/lti/plugin.ts';
import { createProvider } from '../../server/lti/provider.ts';
import { createRegistrar } from '../../server/lti/registrar.ts';
import { seal, unseal } from '../../server/lti/seal.ts';
import { launchStore } from '../../server/lti/store.ts';
import { platformStore } from '../../server/platforms/store.ts';
import { databaseForFile } from '../support/database.ts';
import { LTI, openPlatform, type TestPlatform } from '../support/platform.ts';
import {
  arrive,
  claimsFor,
  confirm,
  initiation,
  landing,
  launch,
  login,
  openTool,
  post,
  SECRET,
  type Tool,
} from './support/tool.ts';

const database = databaseForFile();
let tool: Tool;
let platform: TestPlatform;

beforeAll(async () => {
  platform = await openPlatform();
  tool = await openTool(database().connection);
  await tool.register(platform);
});
afterAll(async () => {
  await tool.close();
  await platform.close();
});

describe('the library', () => {
  test('is the version whose gaps are known', () => {
    const file = new URL('../../node_modules/ltijs/package.json', import.meta.url);
    expect(JSON.parse(readFileSync(file, 'utf8')).version).toBe('5.9.9');
  });

  test('lends us none of its services: they drop, overwrite or misread what matters', () => {
    const folder = new URL('../../server/lti/', import.meta.url);
    const source = readdirSync(folder)
      .map((name) => readFileSync(new URL(name, folder), 'utf8'))
      .join('\n');
    expect(source).not.toMatch(
      /\.(Grade|NamesAndRoles|DeepLinking|DynamicRegistration)\b|scorePublish|submitScore|platformAccessToken|updatePlatformById|dynReg:|devMode: true|whitelist/,
    );
  });

  test('leaves no listener that would end the process', async () => {
    const signals = ['SIGINT', 'SIGTERM', 'exit', 'beforeExit'] as const;
    const before = signals.map((signal) => process.listenerCount(signal));
    const { connection } = database();
    await createProvider(SECRET, createPlugin(platformStore(connection), launchStore(connection)));
    expect(signals.map((signal) => process.listenerCount(signal))).toEqual(before);
  });

  test('works twice in one process, and never touches the connection that all share', async () => {
    const second = await openTool(database().connection);
    expect((await arrive(second, platform)).page.boot).not.toBeNull();
    expect((await arrive(tool, platform)).page.boot).not.toBeNull();
    await second.close();
    expect(mongoose.connection.readyState).toBe(mongoose.STATES.disconnected);
    expect(mongoose.modelNames()).toEqual([]);
  });

  test('keeps nothing of a launch: neither its token nor a name is in the database', async () => {
    const { visit, page } = await arrive(tool, platform, { name: 'A Name To Be Found' });
    await confirm(tool, { code: page.boot?.code }, visit);
    const collections = (await database().connection.listCollections()).map(({ name }) => name);
    expect(collections.sort()).toEqual(['logins', 'pendinglaunches', 'registrations', 'toolkeys']);
    for (const name of collections) {
      const kept = JSON.stringify(await database().connection.collection(name).find().toArray());
      expect(kept).not.toMatch(/A Name To Be Found|eyJ|sesskey/);
    }
  });
});

describe('a launch', () => {
  test('fifty-one of them read the key set once', async () => {
    const fresh = await openPlatform('https://fresh.example');
    await tool.register(fresh);
    const pages = await Promise.all(Array.from({ length: 51 }, () => arrive(tool, fresh)));
    expect(pages.filter(({ page }) => page.boot !== null)).toHaveLength(51);
    expect(fresh.reads).toBe(1);
    await fresh.close();
  });

  test('after a change of the platform’s keys lands', async () => {
    const turning = await openPlatform('https://turning.example');
    await tool.register(turning);
    await arrive(tool, turning);
    const next = await turning.newKey('next');
    turning.publish(next.jwk);
    const visit = await login(tool, turning);
    const token = await turning.sign(claimsFor(turning, visit), { kid: 'next' }, next.sign);
    expect((await launch(tool, { id_token: token, state: visit.state })).boot).not.toBeNull();
    await turning.close();
  });

  test('is answered with a page, not a redirect: no token and no code is in an address or a cookie', async () => {
    const { page } = await arrive(tool, platform);
    expect(page.status).toBe(200);
    expect(page.headers.get('location')).toBeNull();
    expect(page.headers.getSetCookie()).toEqual([]);
    expect(page.html).not.toMatch(/ltik|id_token|eyJ/);
    expect(page.headers.get('cache-control')).toBe('no-store');
  });

  test('is not changed by a token of another kind beside it', async () => {
    const visit = await login(tool, platform);
    const id_token = await platform.sign(claimsFor(platform, visit));
    const form = post(
      { id_token, state: visit.state, ltik: 'x.y.z' },
      { authorization: 'Bearer x.y.z' },
    );
    const page = await landing(await tool.fetch('/lti/launch?ltik=x.y.z', form));
    expect(page.boot).not.toBeNull();
  });

  test('with such a token alone opens nothing', async () => {
    for (const path of ['/lti/launch', '/lti/unused/login', '/lti/unused/keys', '/', '/lti']) {
      const headers = { authorization: 'Bearer x.y.z' };
      const response = await tool.fetch(`${path}?ltik=x.y.z`, { headers });
      expect(response.status).toBe(404);
    }
  });

  test('stays in the same place whatever else the platform says of it', async () => {
    const settings = [{ activity: 'one' }, { activity: 'two' }];
    for (const custom of settings) {
      const { visit, page } = await arrive(tool, platform, { [`${LTI}/custom`]: custom });
      await confirm(tool, { code: page.boot?.code }, visit);
    }
    const [one, two] = tool.admitted.slice(-2).map(({ custom: _, ...place }) => place);
    expect(one).toEqual(two);
    expect(tool.admitted.slice(-2).map(({ custom }) => custom)).toEqual(settings);
  });
});

describe('answers', () => {
  test('a refusal repeats nothing of the request', async () => {
    const response = await tool.fetch(
      '/lti/launch',
      post({ state: 'repeat-me', id_token: 'and-me' }),
    );
    const html = await response.text();
    expect(html).not.toMatch(/repeat-me|and-me/);
    expect(tool.logged()).not.toMatch(/repeat-me|and-me/);
  });

  test('no other origin may read one', async () => {
    const headers = { origin: 'https://evil.example' };
    for (const path of ['/lti/keys', '/lti/login', '/lti/launch']) {
      const response = await tool.fetch(path, { headers });
      expect(response.headers.get('access-control-allow-origin')).toBeNull();
    }
  });

  test('dynamic registration is not offered, and nobody is called for it', async () => {
    const configuration = encodeURIComponent(platform.jwksUrl);
    const before = platform.reads;
    const response = await tool.fetch(`/lti/register?openid_configuration=${configuration}`);
    expect(response.status).toBe(404);
    expect(platform.reads).toBe(before);
  });

  test('a registration without deployments lets nobody in', async () => {
    const empty = await openPlatform('https://empty.example');
    await tool.register(empty, { deployments: [] });
    expect((await arrive(tool, empty)).page.refused).toBe('deploymentUnknown');
    expect(tool.lines.at(-1)).toMatchObject({ code: 'deploymentUnknown', deployment: '1' });
    await empty.close();
  });
});

describe('our keys', () => {
  test('are published for platforms, public halves only, and a new one without a restart', async () => {
    const { connection } = database();
    const platforms = platformStore(connection);
    const registrar = await createRegistrar({ connection, platforms, secret: SECRET });
    const made = await registrar.register({
      ...{ name: 'x', issuer: 'https://keyed.example', clientId: 'c', deployments: ['1'] },
      ...{ authUrl: 'https://a.example', tokenUrl: platform.tokenUrl, jwksUrl: platform.jwksUrl },
      ...{ authServer: null, frameOrigins: [] },
    });
    const other = await openTool(connection);
    const { keys } = (await (await other.fetch('/lti/keys')).json()) as { keys: object[] };
    expect(keys).toContainEqual(expect.objectContaining({ kid: made.kid, use: 'sig' }));
    expect(JSON.stringify(keys)).not.toMatch(/"(d|p|q|dp|dq|qi)":/);
    const token = await other.lti.platformToken(made.id, ['a-scope']);
    expect(token).toMatchObject({ ok: true, value: { scopes: ['a-scope'] } });
    await other.close();
    const kept = await connection.collection('toolkeys').findOne({ half: 'private' });
    expect(kept?.pem).not.toContain('PRIVATE KEY');
  });

  test('do not open with another secret, nor when they were changed', () => {
    const sealed = seal('a private key', SECRET);
    expect(unseal(sealed, SECRET)).toBe('a private key');
    expect(() => unseal(sealed, `${SECRET}.`)).toThrow();
    const bytes = Buffer.from(sealed, 'base64');
    bytes[30] = (bytes[30] ?? 0) ^ 1;
    expect(() => unseal(bytes.toString('base64'), SECRET)).toThrow();
  });
});

describe('one address', () => {
  beforeEach(() => {
    // The counts are those of a minute: here none passes.
    vi.useFakeTimers({ toFake: ['Date'], now: Date.now() });
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  const from = (ip: string) => ({ 'x-forwarded-for': ip, 'sec-fetch-dest': 'document' });

  test('that sends many refused requests is told so, fills no log, and shuts nobody out', async () => {
    const refused = () => tool.fetch('/lti/launch', post({ state: 'x' }, from('192.0.2.1')));
    const first = await Promise.all(Array.from({ length: 600 }, refused));
    expect(first.map(({ status }) => status)).toEqual(Array(600).fill(400));
    const logged = tool.lines.length;
    expect((await refused()).status).toBe(429);
    const unknown = { code: 'f'.repeat(64) };
    const headers = { ...from('192.0.2.1'), 'content-type': 'application/json' };
    const body = JSON.stringify(unknown);
    await tool.fetch('/lti/launch/confirm', { method: 'POST', headers, body });
    expect(tool.lines).toHaveLength(logged);
    const classmate = await tool.fetch('/lti/login', post(initiation(platform), from('192.0.2.1')));
    expect(classmate.status).toBe(302);
  });

  test('from which a whole school comes is never cut off for good requests', async () => {
    const good = () => tool.fetch('/lti/login', post(initiation(platform), from('192.0.2.3')));
    const answers = await Promise.all(Array.from({ length: 300 }, good));
    expect(answers.filter(({ status }) => status === 302)).toHaveLength(300);
  });
});
