import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Sent, Tail } from '../../client/api/attempt.ts';
import { type Post, Sender, type SendState } from '../../client/work/sender.ts';
import { later } from '../../client/work/surroundings.ts';

type Answer = Awaited<ReturnType<Post['send']>>;

const sent = (n: number): Sent => ({
  client: 'page',
  n,
  at: n,
  problem: 0,
  action: { do: 'check' },
});
const failed = (status: number, body: unknown = null): Answer => ({
  ok: false,
  status,
  code: 'any',
  body,
});
const taken = (actions: readonly Sent[]): Answer => ({
  ok: true,
  value: { length: 0, acknowledged: { page: actions.at(-1)?.n ?? -1 }, aside: [], finished: false },
});

/** A page with some unsent actions, and a server that gives the answers of a list, then takes everything. */
const scene = (answers: readonly Answer[]) => {
  const left = [...answers];
  const page = {
    unsent: [sent(0), sent(1)],
    calls: [] as number[],
    states: [] as SendState[],
    tails: [] as Tail[],
  };
  const sender = new Sender(
    {
      batch: () => ({ base: 0, actions: page.unsent }),
      send: async (_base, actions) => {
        page.calls.push(actions.length);
        return left.shift() ?? taken(actions);
      },
      accepted: ({ acknowledged }) => {
        page.unsent = page.unsent.filter(({ n }) => n > (acknowledged.page ?? -1));
      },
      behind: (_base, tail) => page.tails.push(tail),
      changed: (state) => page.states.push(state),
    },
    later,
  );
  return { page, sender };
};

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(() => {
  vi.useRealTimers();
});

describe('the sender', () => {
  it('gathers what was done together into one request, within a second', async () => {
    const { page, sender } = scene([]);
    sender.poke();
    sender.poke();
    await vi.advanceTimersByTimeAsync(1_000);
    expect(page.calls).toEqual([2]);
    expect(page.states.at(-1)).toBe('idle');
  });

  it.each([0, 500, 503, 429])(
    'tries again after status %i, longer apart each time',
    async (status) => {
      const { page, sender } = scene([failed(status), failed(status), failed(status)]);
      sender.poke();
      await vi.advanceTimersByTimeAsync(200);
      expect(page.states.at(-1)).toBe('waiting');
      await vi.advanceTimersByTimeAsync(1_000);
      expect(page.calls).toHaveLength(2);
      await vi.advanceTimersByTimeAsync(10_000);
      expect(page.calls).toHaveLength(4);
      expect(page.unsent).toEqual([]);
    },
  );

  it('does not hurry a waiting retry because more is done, but does when the network is back', async () => {
    const { page, sender } = scene([failed(0), failed(0), failed(0), failed(0)]);
    sender.poke();
    await vi.advanceTimersByTimeAsync(2_000);
    const calls = page.calls.length;
    sender.poke();
    await vi.advanceTimersByTimeAsync(150);
    expect(page.calls).toHaveLength(calls);
    sender.retry();
    await vi.advanceTimersByTimeAsync(10);
    expect(page.calls).toHaveLength(calls + 1);
  });

  it('takes the tail of a 409 and sends again at once', async () => {
    const tail = { length: 5, actions: [] };
    const { page, sender } = scene([failed(409, tail)]);
    sender.poke();
    await vi.advanceTimersByTimeAsync(200);
    expect(page.tails).toEqual([tail]);
    expect(page.calls).toHaveLength(2);
    expect(page.unsent).toEqual([]);
  });

  it('stops when the session is gone, and keeps what is unsent', async () => {
    const { page, sender } = scene([failed(401)]);
    sender.poke();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(page.states.at(-1)).toBe('ended');
    expect(page.calls).toHaveLength(1);
    expect(page.unsent).toHaveLength(2);
  });

  it('says so when the server does not take it, and does not ask for ever', async () => {
    const { page, sender } = scene([failed(400)]);
    sender.poke();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(page.states.at(-1)).toBe('refused');
    expect(page.calls).toHaveLength(1);
  });
});
