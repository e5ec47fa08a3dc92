import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { pausesStore } from '../../server/delivery/pauses-store.ts';
import { createPump } from '../../server/delivery/pump.ts';
import { createOutbound, type Outbound } from '../../server/lti/outbound.ts';
import { databaseForFile } from '../support/database.ts';
import { type BenchParts, bench, Clock, markOf, SILENT, START, tokens } from './bench.ts';
import { Gradebook, serve } from './gradebook.ts';

const SECOND = 1_000;
const MINUTE = 60 * SECOND;
const HOUR = 60 * MINUTE;
const ITEM = '/2/lineitems/2/lineitem';
const answer = (status: number, body = '', headers: Record<string, string> = {}) =>
  ({ kind: 'answer', status, body, headers }) as const;

const database = databaseForFile();
let clock: Clock;
let gradebook: Gradebook;
let school: Awaited<ReturnType<typeof serve>>;
let outbound: Outbound;
let lineitem: string;

beforeEach(async () => {
  for (const name of ['deliveries', 'deliverypauses'])
    await database().connection.collection(name).deleteMany({});
  clock = new Clock();
  gradebook = new Gradebook(clock.read);
  school = await serve(gradebook);
  outbound = createOutbound({ production: false, limits: { total: 300 } });
  lineitem = `${school.origin}${ITEM}?type_id=1`;
});
afterEach(async () => {
  await outbound.close();
  await school.close();
});

const open = (parts: Partial<BenchParts> = {}) =>
  bench(database().connection, { outbound, clock, ...parts });
const ada = (changes = {}) => markOf(lineitem, changes);

describe('a mark that arrives', () => {
  it('is posted once, in the form that platforms take', async () => {
    const { put, next } = await open();
    await put(ada());
    expect(await next(ada())).toMatchObject({
      state: 'sent',
      reason: null,
      lastSent: { revision: 1, scoreGiven: 7.5, scoreMaximum: 10, timestamp: START - SECOND },
    });
    expect(gradebook.posts).toHaveLength(1);
    expect(gradebook.posts[0]).toMatchObject({
      lineitem: ITEM,
      headers: {
        'content-type': 'application/vnd.ims.lis.v1.score+json',
        authorization: 'Bearer token-1',
      },
      body: {
        userId: 'ada',
        scoreGiven: 7.5,
        scoreMaximum: 10,
        comment: 'Both problems worked to the end.',
        timestamp: '2026-11-24T08:59:59.250Z',
        activityProgress: 'Completed',
        gradingProgress: 'FullyGraded',
      },
    });
    expect(gradebook.mark('ada')).toMatchObject({ score: 7.5 });
  });

  it('is not posted again, however often the pump runs', async () => {
    const { put, pump, next } = await open();
    await put(ada());
    await next(ada());
    clock.advance(24 * HOUR);
    await pump.run();
    expect(gradebook.posts).toHaveLength(1);
  });

  it('makes way for a newer one that came before it went out', async () => {
    const { put, next } = await open();
    await put(ada());
    await put(ada({ attempt: 'attempt-2', scoreGiven: 9 }));
    await next(ada());
    expect(gradebook.posts.map(({ body }) => body.scoreGiven)).toEqual([9]);
  });

  it('is followed by the next one two seconds later, under a timestamp two seconds later', async () => {
    const { put, pump, row, next } = await open();
    await put(ada());
    await pump.run();
    clock.advance(100);
    await put(ada({ attempt: 'attempt-2', scoreGiven: 9, timestamp: new Date(START - 900) }));
    await pump.run();
    expect(gradebook.posts).toHaveLength(1);
    expect((await row(ada())).nextTry).toBe(START + 2 * SECOND);
    await next(ada());
    expect(gradebook.posts.map(({ body }) => body.timestamp)).toEqual([
      '2026-11-24T08:59:59.250Z',
      '2026-11-24T09:00:01.250Z',
    ]);
    expect(gradebook.mark('ada')).toMatchObject({ score: 9 });
  });
});

describe('a mark of which nobody knows whether it arrived', () => {
  it.each(['lose', 'hang'] as const)('is sent again word for word (%s)', async (kind) => {
    const { put, next } = await open();
    gradebook.troubles.push({ kind }, answer(500, '[]'));
    await put(ada());
    const after = await next(ada());
    expect(after).toMatchObject({ state: 'waiting', inDoubt: [{ revision: 1 }] });
    expect(after.nextTry - clock.now).toBe(30 * SECOND);
    gradebook.marks.clear();
    await next(ada());
    await next(ada());
    const texts = new Set(gradebook.posts.map(({ text }) => text));
    expect(texts.size).toBe(1);
    expect(gradebook.mark('ada')).toMatchObject({ score: 7.5 });
  });

  it('is taken as sent when the gradebook shows it, without a second post', async () => {
    const { put, next } = await open();
    gradebook.troubles.push({ kind: 'lose' });
    await put(ada());
    expect(await next(ada())).toMatchObject({ state: 'waiting', reason: 'broken' });
    expect(await next(ada())).toMatchObject({ state: 'sent', lastSent: { revision: 1 } });
    expect(gradebook.posts).toHaveLength(1);
    expect(gradebook.reads).toEqual([`${ITEM}/results?type_id=1&user_id=ada`]);
  });

  it('is taken as sent when the platform lets nobody look and answers 409 to the second post', async () => {
    const { put, next } = await open();
    gradebook.troubles.push({ kind: 'lose' });
    gradebook.readTroubles.push(answer(403), answer(403));
    await put(ada());
    await next(ada());
    expect(await next(ada())).toMatchObject({ state: 'sent', lastStatus: 409 });
    expect(gradebook.posts.filter(({ accepted }) => accepted)).toHaveLength(1);
  });

  it('is taken as sent on a 400 that says the platform holds a later one', async () => {
    const { put, next } = await open();
    gradebook.troubles.push({ kind: 'hang' }, answer(400, '{"error":"older than last updated"}'));
    await put(ada());
    await next(ada());
    expect(await next(ada())).toMatchObject({ state: 'sent', lastStatus: 400 });
  });

  it('outlives the sender that died between the post and its record', async () => {
    const dying = await open();
    const dead = {
      ...dying,
      outbox: {
        ...dying.outbox,
        finish: async () => {
          throw new Error('killed');
        },
      },
    };
    await dying.put(ada());
    await createPump(dead).run();
    expect(await dying.row(ada())).toMatchObject({
      state: 'sending',
      nextTry: START + 30 * SECOND,
    });
    clock.advance(29 * SECOND);
    await dying.pump.run();
    expect((await dying.row(ada())).state).toBe('sending');
    clock.advance(SECOND);
    await dying.pump.run();
    expect(await dying.row(ada())).toMatchObject({ state: 'sent', lastSent: { revision: 1 } });
    expect(gradebook.posts.filter(({ accepted }) => accepted)).toHaveLength(1);
  });
});

describe('a platform that is out of order', () => {
  it('is tried after 30 s, 2 min, 10 min, 1 h, 6 h and 6 h again, and given up after three days', async () => {
    const { put, row, next } = await open();
    gradebook.troubles.push(...Array.from({ length: 40 }, () => answer(502)));
    await put(ada());
    const waits: number[] = [];
    for (let state = 'waiting'; state === 'waiting'; ) {
      const after = await next(ada());
      state = after.state;
      if (state === 'waiting') waits.push(after.nextTry - clock.now);
    }
    expect(waits.slice(0, 6)).toEqual([
      30 * SECOND,
      2 * MINUTE,
      10 * MINUTE,
      HOUR,
      6 * HOUR,
      6 * HOUR,
    ]);
    expect(await row(ada())).toMatchObject({
      state: 'stuck',
      reason: 'unavailable',
      lastStatus: 502,
    });
    expect(clock.now - START).toBeGreaterThanOrEqual(72 * HOUR);
    expect(clock.now - START).toBeLessThan(79 * HOUR);
  });

  it('is left alone as long as it asks, while others are served', async () => {
    const { put, pump, row, next } = await open();
    gradebook.troubles.push(answer(429, '', { 'retry-after': '600' }));
    await put(ada());
    await next(ada());
    const bo = ada({ subject: 'bo' });
    const cleo = ada({ subject: 'cleo', registration: 'another school' });
    await put(bo);
    await put(cleo);
    clock.advance(599 * SECOND);
    await pump.run();
    expect(gradebook.posts.map(({ subject }) => subject)).toEqual(['ada', 'cleo']);
    expect(await row(ada())).toMatchObject({ state: 'waiting', reason: 'busy', lastStatus: 429 });
    clock.advance(SECOND);
    await pump.run();
    expect(gradebook.posts.map(({ subject }) => subject).sort()).toEqual([
      'ada',
      'ada',
      'bo',
      'cleo',
    ]);
    expect(await row(ada())).toMatchObject({ state: 'sent' });
  });

  it('is believed when it names the end of the wait as a date', async () => {
    const { put, next } = await open();
    const until = new Date(START + 5 * MINUTE);
    gradebook.troubles.push(answer(503, '', { 'retry-after': until.toUTCString() }));
    await put(ada());
    expect((await next(ada())).nextTry).toBe(Math.floor((START + 5 * MINUTE) / SECOND) * SECOND);
  });

  it('that fails on one mark again and again is given up sooner: the mark is locked', async () => {
    const { put, next, row } = await open();
    gradebook.troubles.push(...Array.from({ length: 5 }, () => answer(500, '[]')));
    await put(ada());
    for (let tries = 1; tries < 5; tries += 1) expect((await next(ada())).state).toBe('waiting');
    expect(await next(ada())).toMatchObject({ state: 'stuck', reason: 'failing', lastStatus: 500 });
    clock.advance(HOUR);
    await put(ada({ attempt: 'attempt-2', scoreGiven: 8 }));
    await next(ada());
    expect(await row(ada())).toMatchObject({ state: 'sent', lastSent: { revision: 2 } });
  });

  it('whose proxy answers 200 with a web page has taken nothing', async () => {
    const { put, next } = await open();
    gradebook.troubles.push(answer(200, '<!doctype html><title>Sign in</title>'));
    await put(ada());
    expect(await next(ada())).toMatchObject({ state: 'waiting', reason: 'strangeAnswer' });
    expect(await next(ada())).toMatchObject({ state: 'sent' });
  });

  it('that cannot be reached is not run into by every mark', async () => {
    const { put, pump } = await open();
    await school.close();
    await put(ada());
    await pump.run();
    const bo = ada({ subject: 'bo' });
    await put(bo);
    await pump.run();
    const { outbox } = await open();
    expect(await outbox.find(ada())).toMatchObject({ reason: 'unreachable', tries: 1 });
    expect(await outbox.find(bo)).toMatchObject({ reason: null, tries: 0 });
  });
});

describe('a platform that refuses', () => {
  it.each([
    ['a person who is no student', answer(400, '[]'), 'notGradable'],
    ['a person who is no student, as Canvas says it', answer(422, '{"errors":{}}'), 'notGradable'],
    ['the tool in this course', answer(403), 'forbidden'],
    ['the call itself', answer(400, '{"reason":"No handler found"}'), 'refused'],
  ] as const)('%s is not asked again', async (_, trouble, reason) => {
    const { put, next, pump } = await open();
    gradebook.troubles.push(trouble);
    await put(ada());
    expect(await next(ada())).toMatchObject({ state: 'stuck', reason, lastStatus: trouble.status });
    clock.advance(24 * HOUR);
    await pump.run();
    expect(gradebook.posts).toHaveLength(1);
  });

  it('an old token gets a new one, once', async () => {
    const { token, asked } = tokens();
    const { put, next } = await open({ token });
    gradebook.tokens.clear();
    gradebook.tokens.add('token-2').add('token-3');
    await put(ada());
    expect(await next(ada())).toMatchObject({ state: 'waiting', reason: 'unauthorised' });
    expect(await next(ada())).toMatchObject({ state: 'sent', renewToken: false });
    expect(asked.filter(({ renew }) => renew).length).toBeGreaterThan(0);
    expect(gradebook.posts.map(({ at }) => at)).toEqual([START, START + 2 * SECOND]);
  });

  it.each([
    [() => true, 'unauthorised'],
    [(scope: string) => !scope.endsWith('/score'), 'scopeMissing'],
  ] as const)(
    'a new token as well stops, saying whether the scope is missing (%#)',
    async (granted, reason) => {
      const { put, next } = await open({ token: tokens(granted).token });
      gradebook.tokens.clear();
      gradebook.readTroubles.push(answer(200, '[]'));
      await put(ada());
      await next(ada());
      expect(await next(ada())).toMatchObject({ state: 'stuck', reason, lastStatus: 401 });
    },
  );

  it.each([
    ['scopeRefused', 'stuck', 'scopeMissing'],
    ['platformUnknown', 'stuck', 'platformUnknown'],
    ['tokenRefused', 'waiting', 'tokenRefused'],
    ['timeout', 'waiting', 'timeout'],
  ] as const)('a token (%s) leaves the mark %s', async (code, state, reason) => {
    const token = async () => ({ ok: false, fault: { code, at: 'registration' } }) as const;
    const { put, next } = await open({ token });
    await put(ada());
    expect(await next(ada())).toMatchObject({ state, reason, inDoubt: [] });
    expect(gradebook.posts).toHaveLength(0);
  });
});

describe('a column that is gone', () => {
  const placementGrades = async () => ({
    lineitems: `${school.origin}/2/lineitems?type_id=1`,
    resourceLink: '1',
  });

  it('is found again through its resource link', async () => {
    const { put, next, row } = await open({ placementGrades });
    gradebook.items.clear();
    gradebook.items.set('/2/lineitems/7/lineitem', '1').set('/2/lineitems/8/lineitem', '5');
    await put(ada());
    expect(await next(ada())).toMatchObject({ state: 'waiting', lastStatus: 404 });
    await next(ada());
    expect(await row(ada())).toMatchObject({ state: 'sent', lineitem });
    expect(gradebook.mark('ada', '/2/lineitems/7/lineitem')).toMatchObject({ score: 7.5 });
  });

  it.each([
    ['nothing', []],
    ['more than one column', ['/2/lineitems/7/lineitem', '/2/lineitems/8/lineitem']],
  ])('stops where %s has taken its place', async (_, items) => {
    const { put, next } = await open({ placementGrades });
    gradebook.items.clear();
    for (const item of items) gradebook.items.set(item, '1');
    await put(ada());
    expect(await next(ada())).toMatchObject({ state: 'stuck', reason: 'lineItemGone' });
  });

  it('is not believed to be gone while it can still be read', async () => {
    const { put, next } = await open({ placementGrades });
    gradebook.troubles.push(answer(404));
    await put(ada());
    expect(await next(ada())).toMatchObject({ state: 'waiting', reason: 'strangeAnswer' });
    expect(await next(ada())).toMatchObject({ state: 'sent' });
  });
});

describe('a mark that a teacher changed in the gradebook', () => {
  it("gives way to the learner's own new finish", async () => {
    const { put, next } = await open();
    await put(ada());
    await next(ada());
    gradebook.override('ada', 3);
    clock.advance(HOUR);
    await put(ada({ attempt: 'attempt-2', scoreGiven: 9, timestamp: new Date(clock.now) }));
    expect(await next(ada())).toMatchObject({ state: 'sent' });
    expect(gradebook.reads).toEqual([]);
  });

  it.each([
    [3, 'changedOnPlatform'],
    [null, 'removedOnPlatform'],
  ] as const)('is not overwritten by a later try of ours (%s)', async (typed, reason) => {
    const { put, next, outbox } = await open();
    await put(ada());
    await next(ada());
    clock.advance(HOUR);
    await put(ada({ attempt: 'attempt-2', scoreGiven: 9, timestamp: new Date(clock.now) }));
    gradebook.troubles.push(answer(503));
    await next(ada());
    gradebook.override('ada', typed);
    expect(await next(ada())).toMatchObject({ state: 'held', reason });
    expect(gradebook.posts).toHaveLength(2);
    const { _id } = await next(ada());
    expect(await outbox.decide(_id, ['held'], false, clock.now)).toBe(true);
    clock.advance(2 * SECOND);
    gradebook.marks.clear();
    expect(await next(ada())).toMatchObject({ state: 'sent', lastSent: { revision: 2 } });
  });

  it('holds a first mark that waits while the teacher typed one in', async () => {
    const { put, next } = await open();
    gradebook.troubles.push({ kind: 'cut' });
    await put(ada());
    await next(ada());
    gradebook.override('ada', 10);
    expect(await next(ada())).toMatchObject({ state: 'held', reason: 'changedOnPlatform' });
  });

  it('is looked at first when somebody asks for another try', async () => {
    const { put, next, outbox } = await open();
    gradebook.troubles.push(answer(403));
    await put(ada());
    const { _id } = await next(ada());
    gradebook.override('ada', 2);
    expect(await outbox.decide(_id, ['stuck'], true, clock.now)).toBe(true);
    expect(await next(ada())).toMatchObject({ state: 'held', reason: 'changedOnPlatform' });
  });
});

describe('a gradebook that holds a later time than ours', () => {
  const later = (score: number) => ({
    ...{ score, comment: null, overridden: false },
    second: Math.floor((START + HOUR) / SECOND),
  });

  it('and shows this very mark has it already', async () => {
    const { put, next } = await open();
    gradebook.marks.set(`${ITEM} ada`, later(7.5));
    await put(ada());
    expect(await next(ada())).toMatchObject({ state: 'sent', lastStatus: 409 });
    expect(gradebook.posts).toHaveLength(1);
  });

  it('and shows another mark holds ours', async () => {
    const { put, next } = await open();
    gradebook.marks.set(`${ITEM} ada`, later(2));
    await put(ada());
    expect(await next(ada())).toMatchObject({
      state: 'held',
      reason: 'changedOnPlatform',
      lastStatus: 409,
    });
  });

  it('though it shows an earlier one of ours gets ours after that', async () => {
    const { put, next, row } = await open();
    await put(ada());
    await next(ada());
    const mark = gradebook.mark('ada');
    if (mark) mark.second = Math.floor(START / SECOND) + 3600;
    clock.advance(MINUTE);
    await put(ada({ attempt: 'attempt-2', scoreGiven: 9, timestamp: new Date(clock.now) }));
    expect(await next(ada())).toMatchObject({ state: 'waiting', reason: 'platformHasNewer' });
    await next(ada());
    expect(await row(ada())).toMatchObject({ state: 'sent', lastSent: { revision: 2 } });
    expect(gradebook.mark('ada')).toMatchObject({ score: 9 });
  });
});

describe('several senders', () => {
  it('send one mark once', async () => {
    const benches = await Promise.all(Array.from({ length: 4 }, () => open()));
    await benches[0]?.put(ada());
    await Promise.all(benches.map(({ pump }) => pump.run()));
    expect(gradebook.posts).toHaveLength(1);
  });

  it('together make at most four calls at a time to one platform, and serve everybody', async () => {
    const benches = await Promise.all(Array.from({ length: 3 }, () => open()));
    const children = Array.from({ length: 30 }, (_, n) => ada({ subject: `child-${n}` }));
    for (const child of children) await benches[0]?.put(child);
    let calls = 0;
    let most = 0;
    let fill = () => {};
    const full = new Promise<void>((resolve) => {
      fill = resolve;
    });
    const counted: Outbound = {
      ...outbound,
      send: async (request) => {
        calls += 1;
        most = Math.max(most, calls);
        if (calls === 4) fill();
        await full;
        const sent = await outbound.send(request);
        calls -= 1;
        return sent;
      },
    };
    const counting = await Promise.all(benches.map(() => open({ outbound: counted })));
    await Promise.all(counting.map(({ pump }) => pump.run()));
    expect(most).toBe(4);
    expect(new Set(gradebook.posts.map(({ subject }) => subject)).size).toBe(30);
    expect(gradebook.posts).toHaveLength(30);
  });

  it('do not wait behind the places of a process that died', async () => {
    const { outbox, pauses, grades, placementGrades, put, pump } = await open();
    for (let n = 0; n < 12; n += 1) await put(ada({ subject: `child-${n}` }));
    for (let slot = 0; slot < 4; slot += 1) await outbox.claim('school', slot, clock.now);
    await pump.run();
    expect(gradebook.posts).toHaveLength(0);
    clock.advance(30 * SECOND);
    await createPump({
      outbox,
      pauses,
      grades,
      placementGrades,
      log: SILENT,
      clock: clock.read,
    }).run();
    expect(new Set(gradebook.posts.map(({ subject }) => subject)).size).toBe(12);
  });

  it('cannot finish what another has taken over', async () => {
    const { outbox, put, row, pump } = await open();
    await put(ada());
    const slow = await outbox.claim('school', 0, clock.now);
    clock.advance(30 * SECOND);
    await pump.run();
    if (slow === null) throw new Error('nothing claimed');
    expect(await outbox.keep(slow.row, slow.claim, clock.now)).toBe(false);
    await outbox.finish(slow.row, slow.claim, {}, { state: 'stuck' }, clock.now);
    expect((await row(ada())).state).toBe('sent');
  });

  it('post only the newest of two marks when one came while the row was taken', async () => {
    const { outbox, pauses, grades, placementGrades, put, row } = await open();
    await put(ada());
    const held = {
      ...outbox,
      keep: async (...given: Parameters<typeof outbox.keep>) => {
        if (given[0].desired.revision === 1)
          await put(ada({ attempt: 'attempt-2', scoreGiven: 9 }));
        return outbox.keep(...given);
      },
    };
    const pump = createPump({
      outbox: held,
      pauses,
      grades,
      placementGrades,
      log: SILENT,
      clock: clock.read,
    });
    await pump.run();
    clock.advance(2 * SECOND);
    await pump.run();
    expect(gradebook.posts.map(({ body }) => body.scoreGiven)).toEqual([9]);
    expect(await row(ada())).toMatchObject({ state: 'sent', lastSent: { revision: 2 } });
  });
});

it('an agreed pause is never shortened', async () => {
  const pauses = pausesStore(database().connection);
  await pauses.begin('school', START + HOUR);
  await pauses.begin('school', START + MINUTE);
  expect(await pauses.holds('school', START + HOUR - 1)).toBe(true);
  expect(await pauses.holds('school', START + HOUR)).toBe(false);
});
