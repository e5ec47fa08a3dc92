import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterEach, describe, expect, it } from 'vitest';
import { portFrom } from '../../deploy/tryout/ports.ts';
import type { ActivitySettings } from '../../deploy/tryout/school/settings.ts';
import { type Database, openDatabase } from '../../server/database/open.ts';
import { createLog } from '../../server/log.ts';
import { beginWork, type ChildAtWork, keptActions, sendSome } from '../support/child-at-work.ts';
import { childWork } from '../support/child-work.ts';
import { connectSchool } from '../support/connect-school.ts';
import { freshUri } from '../support/database.ts';
import { startServer } from '../support/server.ts';
import { launchByHttp } from '../support/tryout-launch.ts';
import { openTestSchool, type TestSchool } from '../support/tryout-school.ts';

const CHILDREN = ['4', '5', '6', '7', '8', '9'];
const PROBLEMS = [
  { stage: 'bars1', multiplicand: '24', multiplier: '3' },
  { stage: 'bars', multiplicand: '132', multiplier: '23' },
] as const;
/** One slip, put right, in the first problem: 39.6 of 40 steps, of 10 points. */
const MARK = 9.9;
const WORKS = [childWork('24', '3', [0, 0]), childWork('132', '23')];
/** More activities than a child can finish meanwhile. */
const COPIES = 100;
const SECRET = 'a secret of at least 32 characters, for this test';

const cleanUp: (() => Promise<unknown>)[] = [];
afterEach(async () => {
  for (const one of cleanUp.splice(0).reverse()) await one();
});

/** The same activity many times over, so that children who finish one go on with the next. */
const copies = (activity: string, count: number): ActivitySettings[] =>
  Array.from({ length: count }, (_, index) => ({
    title: `Two products ${index + 1}`,
    description: 'Two problems.',
    points: 10,
    custom: { activity },
  }));

interface Scene {
  school: TestSchool;
  tool: string;
  /** The environment of a server process; `port` 0 takes any. */
  env(port: number): Record<string, string>;
}

const scene = async (database: Database, data: string, uri: string | null): Promise<Scene> => {
  const port = await portFrom(10_000 + Math.floor(Math.random() * 10_000));
  const tool = `http://localhost:${port}`;
  const school = await openTestSchool({
    tool,
    activities: async (origin) =>
      copies(await connectSchool(database, SECRET, origin, PROBLEMS), COPIES),
  });
  cleanUp.push(school.close);
  const common = {
    PLACEWEAVE_URL: tool,
    PLACEWEAVE_DATA: data,
    PLACEWEAVE_SECRET: SECRET,
    PLACEWEAVE_FREE_MB: '0',
    ...(uri === null ? {} : { PLACEWEAVE_MONGODB_URI: uri }),
  };
  return { school, tool, env: (at) => ({ ...common, PLACEWEAVE_PORT: String(at || port) }) };
};

const openFolder = async (settings: { mongodbUri: string | null; dataFolder: string }) => {
  const opened = await openDatabase({ ...settings, freeMegabytes: 0 }, createLog('silent'));
  if (!opened.ok) throw new Error(opened.fault.text);
  return opened.value;
};

const folder = async (): Promise<string> => {
  const path = await mkdtemp(join(tmpdir(), 'kill-'));
  cleanUp.push(() => rm(path, { recursive: true, force: true, maxRetries: 20, retryDelay: 200 }));
  return path;
};

/** How many batches were acknowledged so far, by whichever server. */
interface Load {
  acknowledged: number;
  /** Nobody needs to begin anything new, nor to kill: all kills are done, or something went wrong. */
  over: boolean;
  /** Why no server will come back; then nobody needs to wait for one. */
  failed: unknown;
}

/** Children who work as long as they may, each one activity after the other; an activity once begun is finished. */
const workOn = async (
  { school, tool }: Scene,
  server: () => string,
  load: Load,
): Promise<ChildAtWork[][]> => {
  const launch = async (child: string, activity: number) => {
    for (;;) {
      server(); // throws when none will come back
      const at = { school: school.origin, tool };
      const launched = await launchByHttp(at, child, String(activity)).catch(() => null);
      if (launched?.token) return launched.token;
      await sleep(60);
    }
  };
  const workOfOne = async (child: string): Promise<ChildAtWork[]> => {
    const all: ChildAtWork[] = [];
    while (!load.over && all.length < COPIES) {
      const work = await beginWork(server, await launch(child, all.length + 1), WORKS);
      all.push(work);
      while (work.acknowledged < work.done.length) {
        await sleep(load.over ? 0 : 20 + Math.random() * 60);
        await sendSome(server, work, 1 + Math.floor(Math.random() * 4));
        load.acknowledged += 1;
      }
    }
    return all;
  };
  return Promise.all(CHILDREN.map(workOfOne));
};

/** Everything acknowledged is there, once, in order, and nothing else is. */
const expectKept = async (server: () => string, works: readonly ChildAtWork[]): Promise<void> => {
  for (const { token, done } of works) {
    const { actions } = await keptActions(server, token);
    const plain = actions.map(({ client, n, problem, action }) => ({ client, n, problem, action }));
    const sent = done.map(({ client, n, problem, action }) => ({ client, n, problem, action }));
    expect(plain).toEqual(sent);
  }
};

interface Gradebook {
  grades: Record<string, Record<string, { final: number | null }>>;
  accepted: { lineItem: string; userId: string }[];
}

const gradebook = async (school: TestSchool): Promise<Gradebook> =>
  (await (await school.control('GET', '')).json()) as Gradebook;

/** Every finished activity has its mark, and each score was accepted once. */
const expectGraded = async (school: TestSchool, works: readonly ChildAtWork[][]): Promise<void> => {
  const due = works.flatMap((own, index) =>
    own.map((_, number) => `column ${number + 1}, child ${CHILDREN[index]}: ${MARK}`),
  );
  const marks = async () => {
    const { grades } = await gradebook(school);
    return Object.entries(grades).flatMap(([column, rows]) =>
      Object.entries(rows).map(
        ([child, { final }]) => `column ${column}, child ${child}: ${final}`,
      ),
    );
  };
  await expect.poll(marks, { timeout: 240_000, interval: 300 }).toHaveLength(due.length);
  expect((await marks()).sort()).toEqual(due.sort());
  const { accepted } = await gradebook(school);
  expect(accepted).toHaveLength(due.length);
};

/** After a random number of acknowledged batches, and a random moment more: always in the middle of work. */
const randomMoment = async (load: Load): Promise<void> => {
  const until = load.acknowledged + 1 + Math.floor(Math.random() * 12);
  while (load.acknowledged < until && !load.over) await sleep(2);
  await sleep(Math.random() * 120);
};

/** A server process that is killed so many times and started again each time; it is up when this resolves. */
const killAgainAndAgain = async (
  env: Record<string, string>,
  times: number,
  load: Load,
): Promise<void> => {
  let server = await startServer(env);
  cleanUp.push(() => server.end('SIGKILL'));
  for (let time = 0; time < times && !load.over; time += 1) {
    await randomMoment(load);
    const how = server.process;
    await server.end('SIGKILL');
    expect(how.signalCode).toBe('SIGKILL');
    server = await startServer(env);
  }
};

/** Like `Promise.all`, but rejects only when all have come to an end. */
const settled = async (tasks: Promise<void>[]): Promise<void> => {
  const failed = (await Promise.allSettled(tasks)).find((one) => one.status === 'rejected');
  if (failed) throw failed.reason;
};

/** Kills the processes behind the addresses while the children work, and looks at what is left. */
const workThroughKills = async (
  here: Scene,
  addresses: readonly string[],
  killing: (load: Load) => Promise<void>,
): Promise<void> => {
  const load: Load = { acknowledged: 0, over: false, failed: null };
  const server = () => {
    if (load.failed) throw load.failed;
    return addresses[Math.floor(Math.random() * addresses.length)] ?? here.tool;
  };
  // Some scores are taken without an answer: the tool must find out that they are there.
  await here.school.control('POST', '/troubles', { on: 'scores', do: 'drop', times: 5 });
  const stop = () => {
    load.over = true;
  };
  const working = workOn(here, server, load);
  working.catch(stop);
  // Both are waited for, also when one fails: no process may be started after the end of the test.
  const killed = killing(load).finally(stop);
  killed.catch((reason) => {
    load.failed = reason;
  });
  await settled([killed, working.then(() => {})]);
  const works = await working;
  expect(works.every((own) => own.length > 0)).toBe(true);
  await expectKept(server, works.flat());
  await expectGraded(here.school, works);
};

describe('a server that is killed without a word, under load', () => {
  it('loses nothing acknowledged and doubles no score: 50 kills, two processes on one database', async () => {
    const uri = freshUri();
    const database = await openFolder({ mongodbUri: uri, dataFolder: '' });
    cleanUp.push(async () => {
      await database.connection.dropDatabase();
      await database.close();
    });
    const here = await scene(database, await folder(), uri);
    const second = await portFrom(21_000 + Math.floor(Math.random() * 10_000));
    await workThroughKills(here, [here.tool, `http://localhost:${second}`], (load) =>
      settled([
        killAgainAndAgain(here.env(0), 25, load),
        killAgainAndAgain(here.env(second), 25, load),
      ]),
    );
  }, 1_500_000);

  it('loses nothing when its own database is killed with it', async () => {
    const data = await folder();
    const database = await openFolder({ mongodbUri: null, dataFolder: data });
    const here = await scene(database, data, null);
    await database.close();
    await workThroughKills(here, [here.tool], (load) => killAgainAndAgain(here.env(0), 3, load));
  }, 600_000);
});
