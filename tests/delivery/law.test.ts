import fc from 'fast-check';
import { expect, it } from 'vitest';
import { createPump } from '../../server/delivery/pump.ts';
import type { ScoreToSend } from '../../server/delivery/row.ts';
import type { Parts } from '../../server/delivery/sender.ts';
import type { Outbound, OutboundRequest } from '../../server/lti/outbound.ts';
import { databaseForFile } from '../support/database.ts';
import { bench, Clock, markOf, SILENT } from './bench.ts';
import { Gradebook, type Post } from './gradebook.ts';

/**
 * The law of the delivery: whatever fails, and however many processes send, the gradebook ends with the newest mark;
 * each revision is taken at most once; timestamps go up; two posts for one person are two seconds apart; a revision
 * that is sent again is the same text.
 */

const ITEM = 'https://moodle.example/2/lineitems/2/lineitem?type_id=1';
const CHILDREN = ['ada', 'bo', 'cleo'];
const PROCESSES = 3;

type Fault = 'none' | 'lose' | 'cut' | 'unavailable' | 'failing' | 'busy' | 'expired' | 'killed';
type Step =
  | { do: 'finish'; child: number }
  | { do: 'wait'; ms: number }
  /** `during`: who finishes while the marks are being sent. */
  | { do: 'send'; faults: readonly Fault[]; during: number | null };

const fault = fc.oneof(
  { weight: 3, arbitrary: fc.constant<Fault>('none') },
  {
    weight: 4,
    arbitrary: fc.constantFrom<Fault>(
      ...(['lose', 'cut', 'unavailable', 'failing', 'busy', 'expired', 'killed'] as const),
    ),
  },
);

const step: fc.Arbitrary<Step> = fc.oneof(
  fc.record({ do: fc.constant('finish' as const), child: fc.nat(CHILDREN.length - 1) }),
  fc.record({
    do: fc.constant('wait' as const),
    ms: fc.constantFrom(10, 900, 2_000, 31_000, 150_000),
  }),
  fc.record({
    do: fc.constant('send' as const),
    faults: fc.array(fault, { maxLength: 6 }),
    during: fc.option(fc.nat(CHILDREN.length - 1)),
  }),
);

const database = databaseForFile();
it('holds under random faults, finishes and processes that die', async () => {
  const total = { posts: 0, accepted: 0, faults: 0 };
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 5, maxLength: 40 }), async (steps) => {
      const run = await play(steps);
      checkLaw(run);
      total.posts += run.gradebook.posts.length;
      total.accepted += run.gradebook.posts.filter(({ accepted }) => accepted).length;
      total.faults += run.happened.length;
    }),
    { numRuns: 30 },
  );
  expect(total.accepted).toBeGreaterThan(0);
  expect(total.faults).toBeGreaterThan(0);
}, 300_000);

/** The same token for every process, always taken: `expired` answers come from the script. */
const token = async (_: string, scopes: readonly string[]) =>
  ({ ok: true, value: { token: 'token-1', scopes } }) as const;

interface Run {
  gradebook: Gradebook;
  newest: Map<string, number>;
  happened: Fault[];
}

async function play(steps: readonly Step[]): Promise<Run> {
  await database().connection.collection('deliveries').deleteMany({});
  await database().connection.collection('deliverypauses').deleteMany({});
  const clock = new Clock();
  const gradebook = new Gradebook(clock.read);
  const script: Fault[] = [];
  const happened: Fault[] = [];
  const network = unreliable(gradebook, clock, script, happened);
  const processes = await Promise.all(
    Array.from({ length: PROCESSES }, () =>
      bench(database().connection, { outbound: network, clock, token }),
    ),
  );
  const [first] = processes;
  if (first === undefined) throw new Error('no process');
  const newest = new Map<string, number>();
  let finishes = 0;

  const pumpAll = () =>
    Promise.all(processes.map((parts) => createPump(mortal(parts, script, happened)).run()));

  const finishNow = async (child: number) => {
    finishes += 1;
    const subject = CHILDREN[child] ?? '';
    newest.set(subject, finishes / 100);
    await first.put(finish(subject, finishes, clock.now));
  };

  for (const now of steps) {
    if (now.do === 'wait') clock.advance(now.ms);
    else if (now.do === 'finish') await finishNow(now.child);
    else {
      script.push(...now.faults);
      await Promise.all([pumpAll(), now.during === null ? null : finishNow(now.during)]);
    }
  }
  script.length = 0;
  await settle(first.outbox, clock, pumpAll);
  return { gradebook, newest, happened };
}

/** The n-th finish is known by its mark. */
function finish(subject: string, n: number, now: number): ScoreToSend {
  return markOf(ITEM, {
    ...{ subject, attempt: `attempt-${n}`, scoreGiven: n / 100 },
    timestamp: new Date(now - (n % 3) * 700),
  });
}

/** Goes on without further faults until nothing waits; what got stuck on the way is tried again by hand. */
async function settle(outbox: Parts['outbox'], clock: Clock, pumpAll: () => Promise<unknown>) {
  for (let round = 0; round < 200; round += 1) {
    const left = await outbox.unsettled();
    if (left.length === 0) return;
    for (const { _id, state } of left)
      if (state === 'stuck') await outbox.decide(_id, ['stuck'], false, clock.now);
    clock.now = Math.max(clock.now + 2_000, Math.min(...left.map(({ nextTry }) => nextTry)));
    await pumpAll();
  }
}

/** Every call takes a little time; the script says what becomes of it. */
function unreliable(
  gradebook: Gradebook,
  clock: Clock,
  script: Fault[],
  happened: Fault[],
): Outbound {
  const broken = { ok: false, fault: { code: 'broken', at: 'url', reason: 'ECONNRESET' } } as const;
  const says = (status: number, headers = {}) =>
    ({ ok: true, value: { status, headers, body: '[]' } }) as const;
  return {
    async send(request: OutboundRequest) {
      clock.advance(20);
      await new Promise((resolve) => setImmediate(resolve));
      const due = script[0] === 'killed' ? 'none' : (script.shift() ?? 'none');
      if (due !== 'none') happened.push(due);
      switch (due) {
        case 'cut':
          return broken;
        case 'lose':
          gradebook.answer(request);
          return broken;
        case 'unavailable':
          return refused(gradebook, request, says(503));
        case 'failing':
          return refused(gradebook, request, says(500));
        case 'busy':
          return refused(gradebook, request, says(429, { 'retry-after': '7' }));
        case 'expired':
          return refused(gradebook, request, says(401));
        default:
          return { ok: true, value: gradebook.answer(request) };
      }
    },
    async close() {},
  };
}

/** The platform has the post on its books although it refused it. */
function refused<T extends { value: { status: number } }>(
  gradebook: Gradebook,
  request: OutboundRequest,
  answer: T,
): T {
  gradebook.answer(request, { kind: 'answer', status: answer.value.status });
  return answer;
}

/** A process that can die between the platform's answer and its own record of it. */
function mortal(parts: Parts, script: Fault[], happened: Fault[]): Parts {
  const finishRow: Parts['outbox']['finish'] = async (...given) => {
    if (script[0] !== 'killed') return parts.outbox.finish(...given);
    happened.push('killed');
    script.shift();
    throw new Error('killed');
  };
  return { ...parts, outbox: { ...parts.outbox, finish: finishRow }, log: SILENT };
}

function checkLaw({ gradebook, newest }: Run): void {
  for (const [child, mark] of newest) {
    expect(gradebook.mark(child)?.score).toBeCloseTo(mark, 6);
    const posts = gradebook.posts.filter(({ subject }) => subject === child);
    const accepted = posts.filter((post) => post.accepted);
    expect(distinct(accepted, revisionOf)).toBe(accepted.length);
    expect(increasing(accepted.map(stampOf), 1_000)).toBe(true);
    expect(
      increasing(
        posts.map(({ at }) => at),
        2_000,
      ),
    ).toBe(true);
    expect(distinct(posts, ({ text }) => text)).toBe(distinct(posts, revisionOf));
    expect(posts.every(({ body }) => body.gradingProgress === 'FullyGraded')).toBe(true);
    expect(posts.every(({ body }) => body.comment && body.scoreMaximum === 10)).toBe(true);
  }
}

const revisionOf = ({ body }: Post) => body.scoreGiven;
const stampOf = ({ body }: Post) => Date.parse(String(body.timestamp));

function distinct(posts: readonly Post[], of: (post: Post) => unknown): number {
  return new Set(posts.map(of)).size;
}

/** Each at least `gap` after the one before. */
function increasing(times: readonly number[], gap: number): boolean {
  return times.every((time, n) => n === 0 || time - (times[n - 1] ?? 0) >= gap);
}
