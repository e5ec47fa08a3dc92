import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { VerifiedLaunch } from '../../server/lti/launch.ts';
import { databaseForFile } from '../support/database.ts';
import { LTI, openPlatform, type TestPlatform } from '../support/platform.ts';
import {
  arrive,
  claimsFor,
  confirm,
  initiation,
  launch,
  login,
  openTool,
  type Tool,
} from './support/tool.ts';

const database = databaseForFile();
let tool: Tool;
let platform: TestPlatform;
/** What the next admission does before it succeeds. */
let admission: (launch: VerifiedLaunch) => Promise<void>;

beforeAll(async () => {
  admission = async () => {};
  platform = await openPlatform();
  tool = await openTool(database().connection, (launch) => admission(launch));
  await tool.register(platform);
});
afterAll(async () => {
  await tool.close();
  await platform.close();
});

const pendings = () => database().connection.collection('pendinglaunches');
const times = <T>(count: number, task: () => Promise<T>) =>
  Promise.all(Array.from({ length: count }, task));

describe('one launch, one session', () => {
  test('the same post 50 times at once: one page that can sign in', async () => {
    const visit = await login(tool, platform);
    const token = await platform.sign(claimsFor(platform, visit));
    const before = tool.admitted.length;
    const pages = await times(50, () => launch(tool, { id_token: token, state: visit.state }));
    const good = pages.filter((page) => page.boot !== null);
    expect(good).toHaveLength(1);
    expect(pages.filter((page) => page.refused === 'loginUnknown')).toHaveLength(49);
    const answers = await times(50, () => confirm(tool, { code: good[0]?.boot?.code }, visit));
    const tokens = await Promise.all(
      answers.map(async (answer) => (await answer.json()) as { token: string }),
    );
    expect(new Set(tokens.map(({ token }) => token)).size).toBe(1);
    expect(tool.admitted).toHaveLength(before + 1);
  });

  test('a second press long after the first carries on with the same session', async () => {
    const { visit, page } = await arrive(tool, platform);
    const [first, second] = [
      await (await confirm(tool, { code: page.boot?.code }, visit)).json(),
      await (await confirm(tool, { code: page.boot?.code }, visit)).json(),
    ];
    expect(second).toEqual(first);
  });

  test('a launch replayed after its session is refused', async () => {
    const visit = await login(tool, platform);
    const form = { id_token: await platform.sign(claimsFor(platform, visit)), state: visit.state };
    const page = await launch(tool, form);
    await confirm(tool, { code: page.boot?.code }, visit);
    expect((await launch(tool, form)).refused).toBe('loginUnknown');
  });

  test('an admission that fails once can be asked for again', async () => {
    const { visit, page } = await arrive(tool, platform);
    admission = async () => {
      throw new Error('the database is away');
    };
    expect((await confirm(tool, { code: page.boot?.code }, visit)).status).toBe(500);
    admission = async () => {};
    expect((await confirm(tool, { code: page.boot?.code }, visit)).status).toBe(200);
  });

  test('what is kept of a confirmed launch opens no session', async () => {
    const { visit, page } = await arrive(tool, platform);
    const { token } = (await (await confirm(tool, { code: page.boot?.code }, visit)).json()) as {
      token: string;
    };
    const kept = JSON.stringify(await pendings().find().toArray());
    for (const secret of [token, page.boot?.code, visit.cookie.split('=')[1]])
      expect(kept).not.toContain(secret);
  });
});

describe('the browser proves itself', () => {
  const proofOf = (cookie: string) => cookie.split('=')[1];

  test('by the cookie', async () => {
    const { visit, page } = await arrive(tool, platform);
    expect((await confirm(tool, { code: page.boot?.code }, visit)).status).toBe(200);
  });

  test('by a value it kept, where the cookie was lost', async () => {
    const { visit, page } = await arrive(tool, platform);
    const body = { code: page.boot?.code, proof: proofOf(visit.cookie) };
    expect((await confirm(tool, body)).status).toBe(200);
  });

  test('no proof: no session, and nothing is kept', async () => {
    const { visit, page } = await arrive(tool, platform);
    const before = tool.admitted.length;
    const answer = await confirm(tool, { code: page.boot?.code });
    expect(answer.status).toBe(403);
    expect(await answer.json()).toMatchObject({ error: { code: 'noProof' } });
    expect((await confirm(tool, { code: page.boot?.code }, visit)).status).toBe(410);
    expect(tool.admitted).toHaveLength(before);
  });

  test('the proof of another login: no session', async () => {
    const { page } = await arrive(tool, platform);
    const stranger = await login(tool, platform);
    const named = `__Host-launch-${page.boot?.proofKey}=${proofOf(stranger.cookie)}`;
    expect((await confirm(tool, { code: page.boot?.code }, { cookie: named })).status).toBe(403);
  });

  test('two children one after the other in one browser: each has an own proof', async () => {
    const [one, two] = [await arrive(tool, platform), await arrive(tool, platform, { sub: '5' })];
    const cookie = `${one.visit.cookie}; ${two.visit.cookie}`;
    for (const { page } of [one, two])
      expect((await confirm(tool, { code: page.boot?.code }, { cookie })).status).toBe(200);
    expect(tool.admitted.slice(-2).map(({ subject }) => subject)).toEqual(['4', '5']);
  });
});

describe('a frame whose browser may forget', () => {
  const canvas = { [`${LTI}/tool_platform`]: { product_family_code: 'canvas' } };

  test('is told with its session how the platform’s own parameters begin once more in a tab, however often it asks', async () => {
    const { visit, page } = await arrive(tool, platform, canvas);
    const asked = { code: page.boot?.code };
    const answers = [await confirm(tool, asked, visit), await confirm(tool, asked, visit)];
    const bodies = await Promise.all(answers.map((answer) => answer.json()));
    const reopen = { action: '/lti/login', fields: initiation(platform) };
    expect(bodies[0]).toMatchObject({ view: 'work', reopen });
    expect(bodies[1]).toEqual(bodies[0]);
  });

  test('has no such way where a launch is good for one sign-in only', async () => {
    const { visit, page } = await arrive(tool, platform);
    const answer = await confirm(tool, { code: page.boot?.code }, visit);
    expect(await answer.json()).toMatchObject({ reopen: null });
  });
});

describe('no proof inside a frame', () => {
  const reopenOf = async (changes: Record<string, unknown>) => {
    const { page } = await arrive(tool, platform, changes);
    const answer = await confirm(tool, { code: page.boot?.code });
    return ((await answer.json()) as { reopen: unknown }).reopen;
  };

  test('the platform’s own parameters begin once more in a tab', async () => {
    const reopen = await reopenOf({ [`${LTI}/tool_platform`]: { product_family_code: 'canvas' } });
    expect(reopen).toEqual({ action: '/lti/login', fields: initiation(platform) });
  });

  test('where a launch is good for one sign-in only, there is none to begin', async () => {
    expect(await reopenOf({})).toBeNull();
  });
});

describe('messages to confirm that are refused', () => {
  test('after a minute', async () => {
    const { visit, page } = await arrive(tool, platform);
    await pendings().updateMany({}, { $set: { createdAt: new Date(Date.now() - 61_000) } });
    const answer = await confirm(tool, { code: page.boot?.code }, visit);
    expect(answer.status).toBe(410);
    expect(await answer.json()).toMatchObject({ error: { code: 'expired' } });
  });

  test.each([
    ['no code', {}],
    ['a code that is an object', { code: { $ne: null } }],
    ['a code of another length', { code: 'abc' }],
    ['a proof that is an object', { code: 'a'.repeat(64), proof: { $ne: null } }],
    ['a list', []],
  ])('%s', async (_name, body) => {
    const answer = await confirm(tool, body);
    expect(answer.status).toBe(400);
    expect(await answer.json()).toMatchObject({ error: { code: 'malformed' } });
  });

  test('from a page of another site', async () => {
    const { visit, page } = await arrive(tool, platform);
    const answer = await tool.fetch('/lti/launch/confirm', {
      method: 'POST',
      headers: {
        'content-type': 'application/json',
        'sec-fetch-site': 'cross-site',
        cookie: visit.cookie,
      },
      body: JSON.stringify({ code: page.boot?.code }),
    });
    expect(answer.status).toBe(400);
    expect((await confirm(tool, { code: page.boot?.code }, visit)).status).toBe(200);
  });

  test('what is no JSON', async () => {
    const headers = { 'content-type': 'application/json' };
    const answer = await tool.fetch('/lti/launch/confirm', { method: 'POST', headers, body: '{' });
    expect(answer.status).toBe(400);
    expect(await answer.json()).toMatchObject({ error: { code: 'malformed' } });
  });
});
