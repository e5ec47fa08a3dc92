import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test, vi } from 'vitest';
import { call, type Server, startServer } from '../support/server.ts';

// Processes are started here, several a test; on a busy machine each takes its time.
vi.setConfig({ testTimeout: 240_000 });

async function started(env: Record<string, string>): Promise<Server> {
  const server = await startServer(env);
  onTestFinished(() => void server.end('SIGKILL'));
  return server;
}

async function folder(): Promise<string> {
  const path = await mkdtemp(join(tmpdir(), 'placeweave-main-'));
  onTestFinished(() => rm(path, { recursive: true, force: true, maxRetries: 20, retryDelay: 200 }));
  return path;
}

test('a server killed together with the database that comes along starts again on the same data', async () => {
  const env = { PLACEWEAVE_DATA: await folder(), PLACEWEAVE_FREE_MB: '0' };
  const first = await started(env);
  expect(await call(`${first.url}/health/ready`, null)).toMatchObject({ status: 200 });
  await first.end('SIGKILL');
  const second = await started(env);
  expect(await call(`${second.url}/health/ready`, null)).toMatchObject({ status: 200 });
});

test.each(['SIGTERM', 'SIGINT'] as const)('%s ends it cleanly', async (signal) => {
  const server = await started({ PLACEWEAVE_DATA: await folder(), PLACEWEAVE_FREE_MB: '0' });
  expect(await server.end(signal)).toBe(0);
  expect(server.lines.map(({ event }) => event)).toContain('closed');
});

test('a port that is taken is named, and the database is closed again', async () => {
  const env = { PLACEWEAVE_DATA: await folder(), PLACEWEAVE_FREE_MB: '0' };
  const first = await started({ ...env, PLACEWEAVE_DATA: await folder() });
  const port = new URL(first.url).port;
  await expect(startServer({ ...env, PLACEWEAVE_PORT: port })).rejects.toThrow(
    `Placeweave: Port ${port} is taken. Remedy:`,
  );
  await started(env);
});

test('another secret than the one that the database knows is refused before anything is sealed with it', async () => {
  const env = { PLACEWEAVE_DATA: await folder(), PLACEWEAVE_FREE_MB: '0' };
  const first = await started({ ...env, PLACEWEAVE_SECRET: 'a'.repeat(32) });
  await first.end('SIGTERM');
  await expect(startServer({ ...env, PLACEWEAVE_SECRET: 'b'.repeat(32) })).rejects.toThrow(
    'Placeweave: PLACEWEAVE_SECRET is not the secret that this database was first used with',
  );
  await started({ ...env, PLACEWEAVE_SECRET: 'a'.repeat(32) });
});

test('a server that cannot start says why in one line and ends', async () => {
  await expect(startServer({ PLACEWEAVE_PORT: 'door' })).rejects.toThrow(
    'Placeweave: PLACEWEAVE_PORT must be a port number',
  );
});
