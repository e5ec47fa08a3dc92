import { describe, expect, it } from 'vitest';
import { createPump } from '../../server/delivery/pump.ts';
import { START } from './bench.ts';
import { answer, HOUR, ITEM, SECOND, sceneForFile } from './scene.ts';

const { ada, current, open, openImpatient } = sceneForFile();

describe('a mark that arrives', () => {
  it('is posted once, in the form that platforms take', async () => {
    const { put, next } = await open();
    await put(ada());
    expect(await next(ada())).toMatchObject({
      state: 'sent',
      reason: null,
      lastSent: { revision: 1, scoreGiven: 7.5, scoreMaximum: 10, timestamp: START - SECOND },
    });
    expect(current().gradebook.posts).toHaveLength(1);
    expect(current().gradebook.posts[0]).toMatchObject({
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
    expect(current().gradebook.mark('ada')).toMatchObject({ score: 7.5 });
  });

  it('is not posted again, however often the pump runs', async () => {
    const { put, pump, next } = await open();
    await put(ada());
    await next(ada());
    current().clock.advance(24 * HOUR);
    await pump.run();
    expect(current().gradebook.posts).toHaveLength(1);
  });

  it('makes way for a newer one that came before it went out', async () => {
    const { put, next } = await open();
    await put(ada());
    await put(ada({ attempt: 'attempt-2', scoreGiven: 9 }));
    await next(ada());
    expect(current().gradebook.posts.map(({ body }) => body.scoreGiven)).toEqual([9]);
  });

  it('is followed by the next one two seconds later, under a timestamp two seconds later', async () => {
    const { put, pump, row, next } = await open();
    await put(ada());
    await pump.run();
    current().clock.advance(100);
    await put(ada({ attempt: 'attempt-2', scoreGiven: 9, timestamp: new Date(START - 900) }));
    await pump.run();
    expect(current().gradebook.posts).toHaveLength(1);
    expect((await row(ada())).nextTry).toBe(START + 2 * SECOND);
    await next(ada());
    expect(current().gradebook.posts.map(({ body }) => body.timestamp)).toEqual([
      '2026-11-24T08:59:59.250Z',
      '2026-11-24T09:00:01.250Z',
    ]);
    expect(current().gradebook.mark('ada')).toMatchObject({ score: 9 });
  });
});

describe('a mark of which nobody knows whether it arrived', () => {
  it.each(['lose', 'hang'] as const)('is sent again word for word (%s)', async (kind) => {
    const { put, next } = await openImpatient();
    current().gradebook.troubles.push({ kind }, answer(500, '[]'));
    await put(ada());
    const after = await next(ada());
    expect(after).toMatchObject({ state: 'waiting', inDoubt: [{ revision: 1 }] });
    expect(after.nextTry - current().clock.now).toBe(30 * SECOND);
    current().gradebook.marks.clear();
    await next(ada());
    await next(ada());
    const texts = new Set(current().gradebook.posts.map(({ text }) => text));
    expect(texts.size).toBe(1);
    expect(current().gradebook.mark('ada')).toMatchObject({ score: 7.5 });
  });

  it('is taken as sent when the gradebook shows it, without a second post', async () => {
    const { put, next } = await open();
    current().gradebook.troubles.push({ kind: 'lose' });
    await put(ada());
    expect(await next(ada())).toMatchObject({ state: 'waiting', reason: 'broken' });
    expect(await next(ada())).toMatchObject({ state: 'sent', lastSent: { revision: 1 } });
    expect(current().gradebook.posts).toHaveLength(1);
    expect(current().gradebook.reads).toEqual([`${ITEM}/results?type_id=1&user_id=ada`]);
  });

  it('is taken as sent when the platform lets nobody look and answers 409 to the second post', async () => {
    const { put, next } = await open();
    current().gradebook.troubles.push({ kind: 'lose' });
    current().gradebook.readTroubles.push(answer(403), answer(403));
    await put(ada());
    await next(ada());
    expect(await next(ada())).toMatchObject({ state: 'sent', lastStatus: 409 });
    expect(current().gradebook.posts.filter(({ accepted }) => accepted)).toHaveLength(1);
  });

  it('is taken as sent on a 400 that says the platform holds a later one', async () => {
    const { put, next } = await openImpatient();
    current().gradebook.troubles.push(
      { kind: 'hang' },
      answer(400, '{"error":"older than last updated"}'),
    );
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
    current().clock.advance(29 * SECOND);
    await dying.pump.run();
    expect((await dying.row(ada())).state).toBe('sending');
    current().clock.advance(SECOND);
    await dying.pump.run();
    expect(await dying.row(ada())).toMatchObject({ state: 'sent', lastSent: { revision: 1 } });
    expect(current().gradebook.posts.filter(({ accepted }) => accepted)).toHaveLength(1);
    expect(current().gradebook.posts).toHaveLength(1);
  });
});
