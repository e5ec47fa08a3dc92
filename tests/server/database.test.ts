import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { type Database, openDatabase, visitDatabase } from '../../server/database/open.ts';
import { watchRoom } from '../../server/database/room.ts';
import { createLog } from '../../server/log.ts';

// Processes are started here, several a test; on a busy machine each takes its time.
vi.setConfig({ testTimeout: 240_000 });

const log = createLog('silent');
const holder = fileURLToPath(new URL('../support/hold-database.ts', import.meta.url));

let folder: string;
let undo: (() => unknown)[];

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'placeweave-data-'));
  undo = [];
});
afterEach(async () => {
  for (const step of undo.reverse()) await step();
  await rm(folder, { recursive: true, force: true });
});

const settings = (freeMegabytes = 0) => ({ mongodbUri: null, dataFolder: folder, freeMegabytes });

async function open(): Promise<Database> {
  const opened = await openDatabase(settings(), log);
  if (!opened.ok) throw new Error(opened.fault.text);
  undo.push(opened.value.close);
  return opened.value;
}

/** Another Placeweave on a data folder: its process and what it said first. */
async function another(env: Record<string, string | undefined> = process.env) {
  const child = spawn(process.execPath, ['--import', 'tsx', holder, folder], {
    stdio: ['ignore', 'pipe', 'inherit'],
    env,
  });
  undo.push(() => end(child, 'SIGKILL'));
  const [line] = await once(child.stdout, 'data');
  return { child, said: JSON.parse(String(line)) };
}

async function end(child: ChildProcess, signal: NodeJS.Signals): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const ended = once(child, 'exit');
  child.kill(signal);
  await ended;
}

async function tenant(): Promise<{ owner: number; mongod: number; port: number }> {
  return JSON.parse(await readFile(join(folder, 'mongod.json'), 'utf8'));
}

const marksIn = ({ connection }: Database) => connection.collection('marks').countDocuments();

describe('the database that comes along', () => {
  test('has transactions: a broken one leaves nothing', async () => {
    const { connection } = await open();
    await connection.createCollection('marks');
    const broken = connection.transaction(async (session) => {
      await connection.collection('marks').insertOne({ a: 1 }, { session });
      throw new Error('broken on purpose');
    });
    await expect(broken).rejects.toThrow('broken on purpose');
    expect(await connection.collection('marks').countDocuments()).toBe(0);
  });

  test('has change streams', async () => {
    const { connection } = await open();
    await connection.createCollection('marks');
    const stream = connection.collection('marks').watch();
    const next = stream.next();
    await sleep(100);
    await connection.collection('marks').insertOne({ seen: true });
    expect((await next) as object).toMatchObject({ fullDocument: { seen: true } });
    await stream.close();
  });

  test('lets nobody in without the key', async () => {
    const database = await open();
    const { port } = await tenant();
    const stranger = await openDatabase(
      { ...settings(), mongodbUri: `mongodb://127.0.0.1:${port}/x?directConnection=true` },
      log,
    );
    if (!stranger.ok) throw new Error(stranger.fault.text);
    const peep = stranger.value.connection.collection('marks').findOne({});
    await expect(peep).rejects.toMatchObject({ code: 13 });
    await stranger.value.close();
    expect(await marksIn(database)).toBe(0);
  });

  test('is started again on the same data after a clean end', async () => {
    const first = await another();
    await end(first.child, 'SIGTERM');
    const second = await another();
    await end(second.child, 'SIGTERM');
    expect(await marksIn(await open())).toBe(2);
  });

  test('is started again on the same data after the process was killed', async () => {
    const { child } = await another();
    await end(child, 'SIGKILL');
    expect(await marksIn(await open())).toBe(1);
  });

  test('moves to another port when its own was taken meanwhile', async () => {
    const first = await another();
    await end(first.child, 'SIGTERM');
    const before = await tenant();
    const squatter = createServer((socket) => socket.destroy()).listen(before.port, '127.0.0.1');
    undo.push(() => squatter.close());
    await once(squatter, 'listening');
    expect(await marksIn(await open())).toBe(1);
    expect((await tenant()).port).not.toBe(before.port);
  });

  test('is brought back when it ends by itself', async () => {
    const database = await open();
    await database.connection.collection('marks').insertOne({ kept: true });
    const { mongod } = await tenant();
    process.kill(mongod, 'SIGKILL');
    await expect.poll(() => marksIn(database).catch(() => -1), { timeout: 30_000 }).toBe(1);
  });

  test('says that another Placeweave is on the folder, and what to do', async () => {
    const { child } = await another();
    const opened = await openDatabase(settings(), log);
    expect(opened).toMatchObject({ ok: false, fault: { code: 'folderInUse' } });
    expect(opened.ok || opened.fault.text).toContain(String(child.pid));
    expect(opened.ok || opened.fault.text).toMatch(/Remedy: .*PLACEWEAVE_DATA/);
  });

  test('is shared with a command that runs beside the server', async () => {
    const { child } = await another();
    const visited = await visitDatabase(settings(), log);
    if (!visited.ok) throw new Error(visited.fault.text);
    expect(await marksIn(visited.value)).toBe(1);
    await visited.value.close();
    expect(child.exitCode).toBeNull();
  });

  test('says that the disk is full, and what to do', async () => {
    const opened = await openDatabase(settings(1e12), log);
    expect(opened).toMatchObject({ ok: false, fault: { code: 'diskFull' } });
    expect(opened.ok || opened.fault.text).toMatch(/Remedy: free some space/);
  });

  test('notices while it runs that the disk has become full', async () => {
    const room = watchRoom(folder, 1e12);
    undo.push(room.close);
    await expect.poll(room.enough, { timeout: 20_000 }).toBe(false);
  });

  test('says that the folder cannot be written', async () => {
    await writeFile(join(folder, 'file'), '');
    const opened = await openDatabase({ ...settings(), dataFolder: join(folder, 'file') }, log);
    expect(opened).toMatchObject({ ok: false, fault: { code: 'folderNotWritable' } });
  });

  test('says what to do when no mongod can be had', async () => {
    const bare = join(folder, 'nothing');
    await mkdir(bare);
    const { said } = await another({ PATH: bare, HOME: bare, XDG_CACHE_HOME: bare });
    expect(said.code).toBe('noMongod');
    expect(said.text).toMatch(/Remedy: install MongoDB .* or .*PLACEWEAVE_MONGODB_URI/);
  });
});

describe('a database that is configured', () => {
  test('that does not answer is reported with what to do', async () => {
    const opened = await openDatabase(
      {
        ...settings(),
        mongodbUri: 'mongodb://127.0.0.1:9/?serverSelectionTimeoutMS=200',
      },
      log,
    );
    expect(opened).toMatchObject({ ok: false, fault: { code: 'unreachable' } });
  });
});
