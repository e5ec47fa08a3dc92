import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, expect, test } from 'vitest';
import { databaseForFile } from '../support/database.ts';
import { appForFile, call, type Server, startServer } from '../support/server.ts';
import { attemptOf, movesOf, Page, type Sent, TWO_ROWS } from './page.ts';

const database = databaseForFile();
const app = appForFile(database);
const KILLS = 50;
const CHILDREN = 6;

let server: Server | undefined;
afterAll(() => server?.end('SIGKILL'));

/** The address of whichever server runs now; a call to one that was killed fails like a lost network. */
const now = {
  post: (token: string | null, path: string, body: unknown) =>
    call(`${server?.url}${path}`, token, body),
};

test('a server killed at 50 moments under load loses and doubles nothing that it acknowledged', async () => {
  const moves = movesOf(TWO_ROWS);
  const activity = await app().activity([TWO_ROWS, TWO_ROWS]);
  const pages: Page[] = [];
  let enough = false;
  const next = () =>
    startServer({
      PLACEWEAVE_MONGODB_URI: database().uri,
      PLACEWEAVE_SECRET: 'a secret of at least 32 characters, for tests',
    });
  server = await next();

  /** One child after another at this desk, each working until everything is acknowledged. */
  async function desk(number: number) {
    for (let turn = 0; !enough; turn += 1) {
      const subject = `desk-${number}-${turn}`;
      const token = await app().token({ subject, custom: { activity } });
      const page = new Page(now, token, (await attemptOf(app(), token)).id);
      pages.push(page);
      for (const problem of [0, 1]) page.act(moves, problem);
      while (page.unsent.length > 0) {
        await page.send(1 + Math.floor(3 * Math.random())).catch(() => sleep(20));
        await sleep(40 * Math.random());
      }
    }
  }

  const desks = Array.from({ length: CHILDREN }, (_, number) => desk(number));
  for (let kill = 0; kill < KILLS; kill += 1) {
    const successor = await next();
    await sleep(200 * Math.random());
    await server.end('SIGKILL');
    server = successor;
  }
  enough = true;
  await Promise.all(desks);

  const attempts = database().connection.collection('attempts');
  const deliveries = database().connection.collection('deliveries');
  for (const { attempt, client, done } of pages) {
    const kept = await attempts.findOne({ _id: attempt as never });
    const entries: Sent[] = kept?.actions ?? [];
    const keys = entries.map((entry) => [entry.client, entry.n, entry.action]);
    expect(keys).toEqual(done.map(({ n, action }) => [client, n, action]));
    expect(kept).toMatchObject({ length: done.length, score: { fraction: '1' } });
    const rows = await deliveries.find({ attempt }).toArray();
    expect(rows.map(({ desired }) => [desired.revision, desired.scoreGiven])).toEqual([[1, 100]]);
  }
  expect(pages.length).toBeGreaterThan(CHILDREN);
}, 1_200_000);

test('a server killed together with the database that comes along goes on with the same work', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'placeweave-killed-'));
  const env = { PLACEWEAVE_DATA: folder, PLACEWEAVE_FREE_MB: '0', PLACEWEAVE_MONGODB_URI: '' };
  const first = await startServer(env);
  expect(await call(`${first.url}/health/ready`, null)).toMatchObject({ status: 200 });
  await first.end('SIGKILL');
  const second = await startServer(env);
  expect(await call(`${second.url}/health/ready`, null)).toMatchObject({ status: 200 });
  expect(await second.end('SIGTERM')).toBe(0);
  expect(second.lines.map(({ event }) => event)).toContain('closed');
  await rm(folder, { recursive: true, force: true });
});

test('a server that cannot start says why in one line and ends', async () => {
  await expect(startServer({ PLACEWEAVE_PORT: 'door' })).rejects.toThrow(
    'Placeweave: PLACEWEAVE_PORT must be a port number',
  );
});
