import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { databaseForFile } from '../support/database.ts';
import { openPlatform, type TestPlatform } from '../support/platform.ts';
import { initiation, landing, login, openTool, post, TOOL_URL, type Tool } from './support/tool.ts';

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

/** Begins with these headers and fields besides the usual ones. */
const begin = (headers: Record<string, string>, fields: Record<string, string> = {}) =>
  tool.fetch('/lti/login', post({ ...initiation(platform), ...fields }, headers));

const query = (fields: Record<string, string>) => `/lti/login?${new URLSearchParams(fields)}`;

const loginBlock = (html: string) =>
  JSON.parse(/<script type="application\/json" id="login">(.*?)<\/script>/.exec(html)?.[1] ?? '{}');

const FRAME = { 'sec-fetch-site': 'cross-site', 'sec-fetch-dest': 'iframe' };

describe('the request to the platform (Security Framework 5.1.1.2)', () => {
  test('has every parameter that a platform checks, and one fixed address to return to', async () => {
    const { authorize, state, nonce } = await login(tool, platform);
    expect(authorize.origin + authorize.pathname).toBe('https://moodle.example/mod/lti/auth.php');
    expect(Object.fromEntries(authorize.searchParams)).toEqual({
      scope: 'openid',
      response_type: 'id_token',
      response_mode: 'form_post',
      prompt: 'none',
      client_id: platform.clientId,
      redirect_uri: `${TOOL_URL}/lti/launch`,
      login_hint: '4',
      lti_message_hint: '{"cmid":2,"launchid":"ltilaunch1_1363927072"}',
      state,
      nonce,
    });
    expect(state).toMatch(/^[0-9a-f]{50}$/);
    expect(nonce).toMatch(/^[0-9a-f]{50}$/);
  });

  test('leaves out the message hint where the platform gave none', async () => {
    const { lti_message_hint: _, ...fields } = initiation(platform);
    const response = await tool.fetch(query(fields), { headers: { 'sec-fetch-dest': 'document' } });
    expect(
      new URL(response.headers.get('location') ?? '').searchParams.has('lti_message_hint'),
    ).toBe(false);
  });

  test('keeps the query of an address that has one already', async () => {
    const special = await openPlatform('https://query.example');
    await tool.register(special, { authUrl: 'https://query.example/auth?realm=one' });
    const { authorize } = await login(tool, special);
    await special.close();
    expect(authorize.searchParams.get('realm')).toBe('one');
    expect(authorize.searchParams.get('scope')).toBe('openid');
  });

  test('goes by GET as well as by POST', async () => {
    const headers = { 'sec-fetch-dest': 'document' };
    const response = await tool.fetch(query(initiation(platform)), { headers });
    expect(response.status).toBe(302);
  });

  test('has a new state and nonce each time; only their digests are kept', async () => {
    const visits = await Promise.all([login(tool, platform), login(tool, platform)]);
    expect(new Set(visits.flatMap(({ state, nonce }) => [state, nonce])).size).toBe(4);
    const kept = JSON.stringify(await database().connection.collection('logins').find().toArray());
    for (const { state, nonce, cookie } of visits)
      for (const secret of [state, nonce, cookie.split('=')[1]]) expect(kept).not.toContain(secret);
  });
});

describe('a redirect where the cookie will come back, a page where it may not', () => {
  test.each([
    ['a window of its own', { 'sec-fetch-site': 'cross-site', 'sec-fetch-dest': 'document' }],
    ['a frame with storage access', { ...FRAME, 'sec-fetch-storage-access': 'active' }],
    ['a frame of the same site', { 'sec-fetch-site': 'same-site', 'sec-fetch-dest': 'iframe' }],
  ])('%s: redirect', async (_name, headers) => {
    const response = await begin(headers);
    expect(response.status).toBe(302);
    expect(response.headers.get('cache-control')).toBe('no-store');
    expect(response.headers.get('referrer-policy')).toBe('no-referrer');
  });

  test.each([
    ['a frame whose cookies are blocked', { ...FRAME, 'sec-fetch-storage-access': 'none' }],
    ['a frame of which nothing is known', FRAME],
    ['a browser that says nothing', {}],
    [
      'a page of our own, whose policy a redirect would meet',
      { 'sec-fetch-site': 'same-origin', 'sec-fetch-dest': 'document' },
    ],
  ])('%s: page', async (_name, headers) => {
    const response = await begin(headers as Record<string, string>);
    expect(response.status).toBe(200);
    const html = await response.text();
    const block = loginBlock(html);
    expect(block).toMatchObject({ storage: null, key: expect.any(String) });
    expect(new URL(block.next).searchParams.get('state')).toMatch(/^[0-9a-f]{50}$/);
    expect(html).toContain('<script type="module" src="/assets/login-0.js">');
    expect(response.headers.get('content-security-policy')).toContain(
      "frame-ancestors 'self' https://moodle.example",
    );
    expect(response.headers.get('x-frame-options')).toBeNull();
  });

  test('the cookie is bound to the host, partitioned, and closed to scripts', async () => {
    const { response } = await login(tool, platform);
    expect(response.headers.getSetCookie()).toEqual([
      expect.stringMatching(
        /^__Host-launch-[0-9a-f]{24}=[0-9a-f]{50}; Path=\/; Secure; HttpOnly; SameSite=None; Partitioned; Max-Age=600$/,
      ),
    ]);
  });

  test('platform storage is asked at the origin of the sign-in address', async () => {
    const html = await (
      await begin(FRAME, { lti_storage_target: 'post_message_forwarding' })
    ).text();
    expect(loginBlock(html).storage).toEqual({
      frame: 'post_message_forwarding',
      origin: 'https://moodle.example',
    });
  });

  test('nothing that a platform sends can break out of the data in the page', async () => {
    const hint = '</script><script>alert(1)</script>';
    const html = await (await begin(FRAME, { login_hint: hint })).text();
    expect(html).not.toContain('alert(1)</script>');
    expect(new URL(loginBlock(html).next).searchParams.get('login_hint')).toBe(hint);
  });
});

describe('logins that are refused with a page', () => {
  const refusal = async (response: Response) => (await landing(response)).refused;

  test.each(['iss', 'login_hint', 'target_link_uri'])('without %s', async (name) => {
    const { [name]: _, ...fields } = initiation(platform);
    expect(await refusal(await tool.fetch('/lti/login', post(fields)))).toBe('malformed');
  });

  test('with more in it than one address to the platform can carry', async () => {
    const hint = 'x'.repeat(4_000);
    const long = { login_hint: hint, lti_message_hint: hint };
    expect((await begin(FRAME, long)).status).toBe(200);
    const kept = () => database().connection.collection('logins').countDocuments();
    const before = await kept();
    expect(await refusal(await begin(FRAME, { ...long, lti_deployment_id: hint }))).toBe(
      'malformed',
    );
    expect(await kept()).toBe(before);
  });

  test('of an unknown platform: its issuer and client id are in the log for the administrator', async () => {
    const fields = { ...initiation(platform), iss: 'https://nobody.example', client_id: 'nobody' };
    const response = await tool.fetch(
      '/lti/login',
      post(fields, { origin: 'https://nobody.example' }),
    );
    expect(await refusal(response)).toBe('platformUnknown');
    expect(tool.lines.at(-1)).toMatchObject({
      code: 'platformUnknown',
      registration: null,
      issuer: 'https://nobody.example',
      clientId: 'nobody',
    });
    expect(response.headers.get('content-security-policy')).toContain(
      "frame-ancestors 'self' https://nobody.example",
    );
  });

  test('of an unknown client of a known platform', async () => {
    const fields = { ...initiation(platform), client_id: 'another' };
    expect(await refusal(await tool.fetch('/lti/login', post(fields)))).toBe('platformUnknown');
  });

  test('of an issuer that tries to write into the page’s policy', async () => {
    const fields = { ...initiation(platform), iss: 'https://x;script-src/' };
    const response = await tool.fetch('/lti/login', post(fields, { origin: 'https://*' }));
    const policy = response.headers.get('content-security-policy');
    expect(policy).toMatch(/frame-ancestors 'self'$/);
    expect(policy).not.toContain('script-src');
  });

  test('while the disk is full: nothing is written, and the keys stay in reach', async () => {
    tool.disk.room = false;
    const kept = () => database().connection.collection('logins').countDocuments();
    const before = await kept();
    const response = await tool.fetch('/lti/login', post(initiation(platform)));
    const keys = await tool.fetch('/lti/keys');
    tool.disk.room = true;
    expect(response.status).toBe(503);
    expect(await refusal(response)).toBe('diskFull');
    expect(await kept()).toBe(before);
    expect(keys.status).toBe(200);
  });

  test('of a suspended platform', async () => {
    const suspended = await openPlatform('https://suspended.example');
    await tool.register(suspended, { status: 'suspended' });
    const response = await tool.fetch('/lti/login', post(initiation(suspended)));
    await suspended.close();
    expect(await refusal(response)).toBe('platformSuspended');
  });
});

describe('one issuer for many schools', () => {
  let schools: TestPlatform[];
  beforeAll(async () => {
    schools = [
      await openPlatform('https://hosted.example', 'school-one'),
      await openPlatform('https://hosted.example', 'school-two'),
    ];
    for (const school of schools) await tool.register(school);
  });
  afterAll(() => Promise.all(schools.map((school) => school.close())));

  test('the client id says which', async () => {
    for (const school of schools) {
      const { authorize } = await login(tool, school);
      expect(authorize.searchParams.get('client_id')).toBe(school.clientId);
    }
  });

  test('without one nothing is guessed', async () => {
    const { client_id: _, ...fields } = initiation(schools[0] as TestPlatform);
    const page = await landing(await tool.fetch('/lti/login', post(fields)));
    expect(page.refused).toBe('platformUnclear');
  });

  test('without one, an issuer with a single registration is still clear', async () => {
    const { client_id: _, ...fields } = initiation(platform);
    const response = await tool.fetch('/lti/login', post(fields, { 'sec-fetch-dest': 'document' }));
    expect(new URL(response.headers.get('location') ?? '').searchParams.get('client_id')).toBe(
      platform.clientId,
    );
  });
});
