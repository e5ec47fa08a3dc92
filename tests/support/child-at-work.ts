import { randomUUID } from 'node:crypto';
import { setTimeout as sleep } from 'node:timers/promises';
import type { ChildAction } from './child-work.ts';

interface Sent {
  client: string;
  n: number;
  at: number;
  problem: number;
  action: ChildAction;
}

type Kept = Sent & { aside?: string };

/** A child's page that sends what was done until the server has it, whatever happens to the server. */
export interface ChildAtWork {
  attempt: string;
  token: string;
  /** Everything that will have been done, in order. */
  done: readonly Sent[];
  /** How many of them the server has acknowledged so far. */
  acknowledged: number;
}

/** Where a request is to go now; another one each time where there are several servers. */
export type Server = () => string;

const ask = async (url: string, token: string, body?: object): Promise<Response | null> =>
  fetch(url, {
    method: body ? 'POST' : 'GET',
    headers: { Authorization: `Bearer ${token}`, 'Content-Type': 'application/json' },
    ...(body ? { body: JSON.stringify(body) } : {}),
    signal: AbortSignal.timeout(10_000),
  }).catch(() => null);

/** Asks again until there is an answer that is no failure of the server. */
const insist = async <T>(
  request: () => Promise<Response | null>,
): Promise<{ status: number; body: T }> => {
  for (;;) {
    const answer = await request();
    const body = answer && answer.status < 500 ? await answer.json().catch(() => null) : null;
    if (answer && body !== null) return { status: answer.status, body: body as T };
    await sleep(40);
  }
};

export const keptActions = async (
  server: Server,
  token: string,
): Promise<{ id: string; actions: Kept[] }> => {
  const { status, body } = await insist<{ attempt: { id: string; actions: Kept[] } }>(() =>
    ask(`${server()}/api/attempt`, token),
  );
  if (status !== 200) throw new Error(`the attempt cannot be read: ${status}`);
  return body.attempt;
};

export const beginWork = async (
  server: Server,
  token: string,
  works: readonly (readonly ChildAction[])[],
): Promise<ChildAtWork> => {
  const { id } = await keptActions(server, token);
  const client = randomUUID();
  const all = works.flatMap((actions, problem) => actions.map((action) => ({ problem, action })));
  const done = all.map((one, n) => ({ client, n, at: n * 1000, ...one }));
  return { attempt: id, token, done, acknowledged: 0 };
};

interface Answer {
  length: number;
  acknowledged?: Record<string, number>;
}

/** Sends the next few actions; a lost answer means that they are sent again. */
export const sendSome = async (
  server: Server,
  child: ChildAtWork,
  count: number,
): Promise<void> => {
  const { attempt, token, done, acknowledged: base } = child;
  const actions = done.slice(base, base + count);
  const { status, body } = await insist<Answer>(() =>
    ask(`${server()}/api/attempts/${attempt}/actions`, token, { base, actions }),
  );
  if (status === 409) {
    // The only page of this attempt: what the server has beyond `base` came from here.
    child.acknowledged = body.length;
    return;
  }
  if (status !== 200) throw new Error(`actions were refused: ${status} ${JSON.stringify(body)}`);
  child.acknowledged = (body.acknowledged?.[done[0]?.client ?? ''] ?? base - 1) + 1;
};
