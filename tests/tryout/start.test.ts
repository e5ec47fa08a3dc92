import { mkdtemp, rm } from 'node:fs/promises';
import { createServer, type Server } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { expectedScore, stepCount } from '../../deploy/tryout/check/expected.ts';
import type { ChildProcess } from '../../deploy/tryout/child-process.ts';
import { keepRunning } from '../../deploy/tryout/keep-running.ts';
import { keepPlan, makePlan } from '../../deploy/tryout/plan.ts';
import { portFrom } from '../../deploy/tryout/ports.ts';
import { parseProblem, replay, score } from '../../engine/index.ts';
import { childWork } from '../support/child-work.ts';

const cleanUp: (() => Promise<unknown>)[] = [];
afterEach(async () => {
  for (const one of cleanUp.splice(0).reverse()) await one();
});

const occupied = async (port: number, host?: string): Promise<Server> => {
  const server = createServer();
  await new Promise<void>((done) => server.listen({ port, host }, done));
  cleanUp.push(() => new Promise((done) => server.close(done)));
  return server;
};

const folder = async (): Promise<string> => {
  const path = await mkdtemp(join(tmpdir(), 'tryout-'));
  cleanUp.push(() => rm(path, { recursive: true, force: true }));
  return path;
};

const someFreePort = (): Promise<number> => portFrom(10_000 + Math.floor(Math.random() * 20_000));

describe('ports', () => {
  it.each([[undefined], ['127.0.0.1']])('move on when taken (on %s)', async (host) => {
    const port = await someFreePort();
    await occupied(port, host);
    expect(await portFrom(port)).toBeGreaterThan(port);
  });

  it('move past those that are promised to somebody else', async () => {
    const port = await someFreePort();
    expect(await portFrom(port, [port])).toBeGreaterThan(port);
  });
});

describe('the plan of a try-out', () => {
  it('puts tool and school on two sites', async () => {
    const port = await someFreePort();
    const { tool, school } = await makePlan(await folder(), { tool: port, school: port });
    expect(new URL(tool).hostname).toBe('localhost');
    expect(new URL(school).hostname).toBe('127.0.0.1');
    expect(new URL(tool).port).not.toBe(new URL(school).port);
  });

  it('is the same at the next start, with the same ports, client and activities', async () => {
    const data = await folder();
    const port = await someFreePort();
    const first = {
      ...(await makePlan(data, { tool: port, school: port })),
      activities: ['a', 'b'],
    };
    await keepPlan(first);
    expect(await makePlan(data)).toEqual(first);
  });

  it('keeps the name of the school when its port has to move', async () => {
    const data = await folder();
    const port = await someFreePort();
    const first = await makePlan(data, { tool: port, school: port });
    await keepPlan(first);
    await occupied(first.schoolPort);
    const second = await makePlan(data);
    expect(second.schoolPort).not.toBe(first.schoolPort);
    expect(second.issuer).toBe(first.issuer);
  });
});

/** A process that ends when it is told to. */
const fakeProcess = () => {
  let end: (how: number | NodeJS.Signals) => void = () => {};
  const ended = new Promise<number | NodeJS.Signals>((settle) => {
    end = settle;
  });
  const child: ChildProcess = {
    pid: 1,
    startedAt: Date.now(),
    ended,
    kill: (signal) => end(signal),
    stop: async () => end(0),
    lastWords: async () => 'its last words',
  };
  return { child, end };
};

describe('a process that is kept running', () => {
  it('is started again when it ends by itself, and reported after three ends in a row', async () => {
    vi.spyOn(console, 'error').mockImplementation(() => {});
    const started: ReturnType<typeof fakeProcess>[] = [];
    const giveUp = vi.fn();
    const start = async () => {
      started.push(fakeProcess());
      return started.at(-1)!.child;
    };
    await keepRunning('The tool', start, giveUp);
    for (let count = 1; count <= 2; count += 1) {
      started.at(-1)!.end('SIGKILL');
      await expect.poll(() => started.length).toBe(count + 1);
    }
    expect(giveUp).not.toHaveBeenCalled();
    started.at(-1)!.end(1);
    await expect.poll(() => giveUp.mock.calls.length).toBe(1);
    expect(giveUp.mock.calls[0]?.[0]).toContain('its last words');
    vi.restoreAllMocks();
  });

  it('stays ended once it was stopped', async () => {
    const start = vi.fn(async () => fakeProcess().child);
    const kept = await keepRunning('The tool', start, () => {});
    await kept.stop();
    expect(start).toHaveBeenCalledTimes(1);
  });
});

describe('what the check expects', () => {
  it.each([
    ['bars1', '24', '3'],
    ['bars', '132', '23'],
    ['bars', '999', '99'],
  ])('has as many steps as the tool judges (%s, %s × %s)', (stage, multiplicand, multiplier) => {
    const problem = parseProblem({ stage, multiplicand, multiplier });
    if (!problem.ok) throw new Error(problem.fault.code);
    const clean = replay(problem.value, childWork(multiplicand, multiplier));
    expect(clean.steps).toHaveLength(stepCount(multiplicand, multiplier));
    expect(clean.complete).toBe(true);
    expect(score([clean]).fraction).toEqual({ num: 1n, den: 1n });
  });

  it('takes four tenths off for a step put right, and rounds half up', () => {
    expect(expectedScore(40, 1, 10)).toBe(9.9);
    expect(expectedScore(40, 0, 10)).toBe(10);
    expect(expectedScore(3, 1, 10)).toBe(8.67);
    // 15.6 / 16 of 5 points are 4.875.
    expect(expectedScore(16, 1, 5)).toBe(4.88);
  });
});
