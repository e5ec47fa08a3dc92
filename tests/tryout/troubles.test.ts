import { spawn } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestSchool, type TestSchool } from '../support/tryout-school.ts';

const AGS = 'https://purl.imsglobal.org/spec/lti-ags/scope';
const SCORE_TYPE = 'application/vnd.ims.lis.v1.score+json';

let school: TestSchool;
let token = '';
beforeEach(async () => {
  school = await openTestSchool();
  token = await school.token(`${AGS}/score ${AGS}/result.readonly`);
});
afterEach(() => school.close());

const send = (seconds = 0) =>
  fetch(`${school.origin}/services/2/lineitems/1/lineitem/scores?tool=1`, {
    method: 'POST',
    headers: { authorization: `Bearer ${token}`, 'content-type': SCORE_TYPE },
    body: JSON.stringify({
      userId: '4',
      timestamp: new Date(Date.UTC(2026, 0, 1, 0, 0, seconds)).toISOString(),
      scoreGiven: 7,
      scoreMaximum: 10,
      activityProgress: 'Completed',
      gradingProgress: 'FullyGraded',
    }),
  });

const accepted = async () =>
  ((await (await school.control('GET', '')).json()) as { accepted: unknown[] }).accepted;

const plan = (trouble: object) => school.control('POST', '/troubles', { on: 'scores', ...trouble });

describe('the school, told to misbehave', () => {
  it.each([500, 503, 404, 409])(
    'answers %d as often as told, without taking the score',
    async (status) => {
      await plan({ do: 'status', status, times: 2 });
      expect([(await send()).status, (await send()).status]).toEqual([status, status]);
      expect(await accepted()).toHaveLength(0);
      expect((await send()).status).toBe(200);
    },
  );

  it('asks for patience with 429 and Retry-After', async () => {
    await plan({ do: 'status', status: 429, retryAfter: '7' });
    const answer = await send();
    expect([answer.status, answer.headers.get('retry-after')]).toEqual([429, '7']);
  });

  it('takes a score and then breaks the connection instead of answering', async () => {
    await plan({ do: 'drop' });
    await expect(send()).rejects.toThrow();
    expect(await accepted()).toHaveLength(1);
    expect((await send()).status).toBe(409);
  });

  it('is slow, and does the work all the same', async () => {
    await plan({ do: 'slow', milliseconds: 300 });
    const began = performance.now();
    expect((await send()).status).toBe(200);
    expect(performance.now() - began).toBeGreaterThanOrEqual(290);
  });

  it('takes scopes away from tokens that it gave, and gives them back', async () => {
    await school.control('PUT', '/revoked', { scopes: [`${AGS}/score`] });
    expect((await send()).status).toBe(401);
    expect((await school.askToken(`${AGS}/score`)).status).toBe(400);
    await school.control('PUT', '/revoked', { scopes: [] });
    expect((await send()).status).toBe(200);
  });

  it('disturbs only what it was told to, and nothing once told to stop', async () => {
    await plan({ do: 'status', status: 500, times: 9 });
    expect((await fetch(`${school.origin}/keys`)).status).toBe(200);
    await school.control('DELETE', '/troubles');
    expect((await send()).status).toBe(200);
  });

  it.each([
    [{ do: 'explode' }],
    [{ on: 'nothing', do: 'drop' }],
    [{ do: 'slow' }],
    [{ do: 'status', status: 200 }],
  ])('refuses what it does not understand: %j', async (trouble) => {
    expect((await plan(trouble)).status).toBe(400);
  });
});

const run = (args: string[], env: NodeJS.ProcessEnv) =>
  new Promise<{ code: number | null; said: string }>((done) => {
    const main = new URL('../../deploy/tryout/school/main.ts', import.meta.url).pathname;
    const child = spawn(process.execPath, ['--import', 'tsx', main, ...args], {
      env: { ...process.env, ...env },
    });
    let said = '';
    child.stderr.on('data', (text) => {
      said += text;
    });
    child.on('exit', (code) => done({ code, said }));
  });

describe('the process of the school', () => {
  it('refuses to run in production and says why', async () => {
    const { code, said } = await run([], { NODE_ENV: 'production' });
    expect(code).toBe(2);
    expect(said).toContain('NODE_ENV=production');
  });

  it('says what is missing when it is started without its files', async () => {
    const { code, said } = await run([], { NODE_ENV: 'development' });
    expect(code).toBe(2);
    expect(said).toContain('SETTINGS.json');
  });
});

describe('the state of the school', () => {
  it('is one whole file after many scores at once', async () => {
    await Promise.all(Array.from({ length: 40 }, (_, second) => send(second)));
    const stored = JSON.parse(await readFile(school.file, 'utf8')) as { accepted: unknown[] };
    expect(stored.accepted).toEqual(await accepted());
  });
});
