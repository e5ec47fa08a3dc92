import { type ChildProcess, spawn } from 'node:child_process';
import { randomBytes, randomUUID } from 'node:crypto';
import { once } from 'node:events';
import type { AddressInfo } from 'node:net';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll } from 'vitest';
import type { WrittenProblem } from '../../engine/index.ts';
import { activityStore } from '../../server/activities/store.ts';
import { assemble, type Placeweave } from '../../server/assemble.ts';
import type { Database } from '../../server/database/open.ts';
import { httpServer } from '../../server/http.ts';
import { createLog } from '../../server/log.ts';
import type { VerifiedLaunch } from '../../server/lti/launch.ts';

export const SCORE_SCOPE = 'https://purl.imsglobal.org/spec/lti-ags/scope/score';

/** A launch that passed every check; tests say only what matters to them. */
export function launchOf(changes: Partial<VerifiedLaunch> = {}): VerifiedLaunch {
  return {
    message: 'resource',
    registration: 'harbour-lane',
    deployment: '1',
    subject: `child-${randomBytes(4).toString('hex')}`,
    role: 'learner',
    testUser: false,
    context: { id: 'lantern', title: 'Mathematics, Lantern class' },
    resourceLink: { id: 'link-1', title: 'Two rows' },
    custom: {},
    grades: {
      lineitem: 'http://127.0.0.1:9/lineitems/1',
      lineitems: 'http://127.0.0.1:9/lineitems',
      scopes: [SCORE_SCOPE],
    },
    roster: null,
    locale: 'en',
    forUser: null,
    mentees: [],
    ...changes,
  };
}

export interface Answer {
  readonly status: number;
  readonly headers: Headers;
  // biome-ignore lint/suspicious/noExplicitAny: a test looks at whatever came.
  readonly body: any;
}

/** Calls the API as a page does. */
export async function call(
  url: string,
  token: string | null,
  body?: unknown,
  headers: Record<string, string> = {},
): Promise<Answer> {
  const response = await fetch(url, {
    method: body === undefined ? 'GET' : 'POST',
    headers: {
      ...(token !== null && { authorization: `Bearer ${token}` }),
      ...(body !== undefined && { 'content-type': 'application/json' }),
      ...headers,
    },
    ...(body !== undefined && { body: typeof body === 'string' ? body : JSON.stringify(body) }),
  });
  const text = await response.text();
  const json = response.headers.get('content-type')?.includes('application/json');
  return {
    status: response.status,
    headers: response.headers,
    body: json ? JSON.parse(text) : text,
  };
}

export interface TestApp {
  readonly url: string;
  readonly placeweave: Placeweave;
  /** What time it is for sessions and attempts; tests may move it. */
  readonly clock: { offset: number };
  /** Whether the disk is said to have room. */
  readonly disk: { room: boolean };
  activity(
    problems: readonly WrittenProblem[],
    release?: 'onFinish' | 'byTeacher',
    more?: { readonly choice?: boolean },
  ): Promise<string>;
  token(changes?: Partial<VerifiedLaunch>): Promise<string>;
  get(token: string | null, path: string): Promise<Answer>;
  post(token: string | null, path: string, body: unknown): Promise<Answer>;
}

/** The app in this process on a free port, for one test file. Launches are admitted without a platform. */
export function appForFile(database: () => Database): () => TestApp {
  let app: TestApp | undefined;
  let close = async () => {};
  beforeAll(async () => {
    const started = await startApp(database());
    app = started.app;
    close = started.close;
  });
  afterAll(() => close());
  return () => {
    if (app === undefined) throw new Error('the app starts before the first test');
    return app;
  };
}

/** Another one may be started on the same database: several server processes share one. */
export async function startApp(database: Database) {
  const clock = { offset: 0 };
  const disk = { room: true };
  const placeweave = await assemble({
    config: { url: 'http://localhost:4600', production: false },
    secret: 'a secret of at least 32 characters, for tests',
    database: { connection: database.connection, hasRoom: () => disk.room },
    log: createLog('silent'),
    clock: () => new Date(Date.now() + clock.offset),
  });
  const server = httpServer(placeweave.app).listen(0, '127.0.0.1');
  await once(server, 'listening');
  const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const app: TestApp = {
    ...{ url, placeweave, clock, disk },
    async activity(problems, release = 'onFinish', more = {}) {
      const activity = randomUUID();
      const content = { registration: 'harbour-lane', title: 'Two rows', points: '100' };
      const createdAt = new Date();
      await activityStore(database.connection).add({
        ...content,
        ...{ activity, problems, release, createdAt, ...more },
      });
      return activity;
    },
    token: async (changes) => (await placeweave.admit(launchOf(changes))).value.token,
    get: (token, path) => call(url + path, token),
    post: (token, path, body) => call(url + path, token, body),
  };
  const close = async () => {
    server.closeAllConnections();
    server.close();
    await placeweave.close();
  };
  return { app, close };
}

export interface Server {
  readonly url: string;
  readonly process: ChildProcess;
  /** Every line it logged. */
  readonly lines: Record<string, unknown>[];
  end(signal: NodeJS.Signals): Promise<number | null>;
}

/** The real server as a process of its own; resolves once it says that it is ready, rejects if it ends before. */
export async function startServer(env: Record<string, string>): Promise<Server> {
  const main = fileURLToPath(new URL('../../server/main.ts', import.meta.url));
  const child = spawn(process.execPath, ['--import', 'tsx', main], {
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, NODE_ENV: 'test', PLACEWEAVE_PORT: '0', ...env },
  });
  const lines: Record<string, unknown>[] = [];
  const ended = once(child, 'exit').then(([code]) => code as number | null);
  let complaint = '';
  child.stderr.on('data', (text) => {
    complaint += text;
  });
  const ready = new Promise<number>((settle, fail) => {
    createInterface({ input: child.stdout }).on('line', (text) => {
      const line = JSON.parse(text);
      lines.push(line);
      if (line.event === 'ready') settle(line.port);
    });
    ended.then(() => fail(new Error(complaint)));
  });
  const end = (signal: NodeJS.Signals) => {
    child.kill(signal);
    return ended;
  };
  return { url: `http://127.0.0.1:${await ready}`, process: child, lines, end };
}
