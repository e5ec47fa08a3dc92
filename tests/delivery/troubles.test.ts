import { describe, expect, it } from 'vitest';
import { START, tokens } from './bench.ts';
import { answer, HOUR, MINUTE, SECOND, sceneForFile } from './scene.ts';

const { ada, current, lineitem, open } = sceneForFile();

describe('a platform that is out of order', () => {
  it('is tried after 30 s, 2 min, 10 min, 1 h, 6 h and 6 h again, and given up after three days', async () => {
    const { put, row, next } = await open();
    current().gradebook.troubles.push(...Array.from({ length: 40 }, () => answer(502)));
    await put(ada());
    const waits: number[] = [];
    for (let state = 'waiting'; state === 'waiting'; ) {
      const after = await next(ada());
      state = after.state;
      if (state === 'waiting') waits.push(after.nextTry - current().clock.now);
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
    expect(current().clock.now - START).toBeGreaterThanOrEqual(72 * HOUR);
    expect(current().clock.now - START).toBeLessThan(79 * HOUR);
  });

  it('is left alone as long as it asks, while others are served', async () => {
    const { put, pump, row, next } = await open();
    current().gradebook.troubles.push(answer(429, '', { 'retry-after': '600' }));
    await put(ada());
    await next(ada());
    const bo = ada({ subject: 'bo' });
    const cleo = ada({ subject: 'cleo', registration: 'another school' });
    await put(bo);
    await put(cleo);
    current().clock.advance(599 * SECOND);
    await pump.run();
    expect(current().gradebook.posts.map(({ subject }) => subject)).toEqual(['ada', 'cleo']);
    expect(await row(ada())).toMatchObject({ state: 'waiting', reason: 'busy', lastStatus: 429 });
    current().clock.advance(SECOND);
    await pump.run();
    expect(
      current()
        .gradebook.posts.map(({ subject }) => subject)
        .sort(),
    ).toEqual(['ada', 'ada', 'bo', 'cleo']);
    expect(await row(ada())).toMatchObject({ state: 'sent' });
  });

  it('is believed when it names the end of the wait as a date', async () => {
    const { put, next } = await open();
    const until = new Date(START + 5 * MINUTE);
    current().gradebook.troubles.push(answer(503, '', { 'retry-after': until.toUTCString() }));
    await put(ada());
    expect((await next(ada())).nextTry).toBe(Math.floor((START + 5 * MINUTE) / SECOND) * SECOND);
  });

  it('that fails on one mark again and again is given up sooner: the mark is locked', async () => {
    const { put, next, row } = await open();
    current().gradebook.troubles.push(...Array.from({ length: 5 }, () => answer(500, '[]')));
    await put(ada());
    for (let tries = 1; tries < 5; tries += 1) expect((await next(ada())).state).toBe('waiting');
    expect(await next(ada())).toMatchObject({ state: 'stuck', reason: 'failing', lastStatus: 500 });
    current().clock.advance(HOUR);
    await put(ada({ attempt: 'attempt-2', scoreGiven: 8 }));
    await next(ada());
    expect(await row(ada())).toMatchObject({ state: 'sent', lastSent: { revision: 2 } });
  });

  it('whose proxy answers 200 with a web page has taken nothing', async () => {
    const { put, next } = await open();
    current().gradebook.troubles.push(answer(200, '<!doctype html><title>Sign in</title>'));
    await put(ada());
    expect(await next(ada())).toMatchObject({ state: 'waiting', reason: 'strangeAnswer' });
    expect(await next(ada())).toMatchObject({ state: 'sent' });
  });

  it('that cannot be reached is not run into by every mark', async () => {
    const { put, pump } = await open();
    await current().school.close();
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
    current().gradebook.troubles.push(trouble);
    await put(ada());
    expect(await next(ada())).toMatchObject({ state: 'stuck', reason, lastStatus: trouble.status });
    current().clock.advance(24 * HOUR);
    await pump.run();
    expect(current().gradebook.posts).toHaveLength(1);
  });

  it('an old token gets a new one, once', async () => {
    const { token, asked } = tokens();
    const { put, next } = await open({ token });
    current().gradebook.tokens.clear();
    current().gradebook.tokens.add('token-2').add('token-3');
    await put(ada());
    expect(await next(ada())).toMatchObject({ state: 'waiting', reason: 'unauthorised' });
    expect(await next(ada())).toMatchObject({ state: 'sent', renewToken: false });
    expect(asked.filter(({ renew }) => renew).length).toBeGreaterThan(0);
    expect(current().gradebook.posts.map(({ at }) => at)).toEqual([START, START + 2 * SECOND]);
  });

  it.each([
    [() => true, 'unauthorised'],
    [(scope: string) => !scope.endsWith('/score'), 'scopeMissing'],
  ] as const)(
    'a new token as well stops, saying whether the scope is missing (%#)',
    async (granted, reason) => {
      const { put, next } = await open({ token: tokens(granted).token });
      current().gradebook.tokens.clear();
      current().gradebook.readTroubles.push(answer(200, '[]'));
      await put(ada());
      await next(ada());
      expect(await next(ada())).toMatchObject({ state: 'stuck', reason, lastStatus: 401 });
    },
  );

  it.each([
    ['scopeRefused', 'stuck', 'scopeMissing'],
    ['platformUnknown', 'stuck', 'platformUnknown'],
    ['tokenRefused', 'waiting', 'tokenRefused'],
    ['keySealed', 'waiting', 'keySealed'],
    ['timeout', 'waiting', 'timeout'],
  ] as const)('a token (%s) leaves the mark %s', async (code, state, reason) => {
    const token = async () => ({ ok: false, fault: { code, at: 'registration' } }) as const;
    const { put, next } = await open({ token });
    await put(ada());
    expect(await next(ada())).toMatchObject({ state, reason, inDoubt: [] });
    expect(current().gradebook.posts).toHaveLength(0);
  });
});

describe('a column that is gone', () => {
  const placementGrades = async () => ({
    lineitems: `${current().school.origin}/2/lineitems?type_id=1`,
    resourceLink: '1',
  });

  it('is found again through its resource link', async () => {
    const { put, next, row } = await open({ placementGrades });
    current().gradebook.items.clear();
    current()
      .gradebook.items.set('/2/lineitems/7/lineitem', '1')
      .set('/2/lineitems/8/lineitem', '5');
    await put(ada());
    expect(await next(ada())).toMatchObject({ state: 'waiting', lastStatus: 404 });
    await next(ada());
    expect(await row(ada())).toMatchObject({ state: 'sent', lineitem: lineitem() });
    expect(current().gradebook.mark('ada', '/2/lineitems/7/lineitem')).toMatchObject({
      score: 7.5,
    });
  });

  it('is begun anew: a mark that was in the old one is not missed in the new one', async () => {
    const { put, next } = await open({ placementGrades });
    await put(ada());
    await next(ada());
    current().gradebook.items.clear();
    current().gradebook.items.set('/2/lineitems/7/lineitem', '1');
    await put(ada({ attempt: 'attempt-2', scoreGiven: 9 }));
    await next(ada());
    expect(await next(ada())).toMatchObject({ state: 'sent', lastSent: { revision: 2 } });
  });

  it.each([
    ['nothing', []],
    ['more than one column', ['/2/lineitems/7/lineitem', '/2/lineitems/8/lineitem']],
  ])('stops where %s has taken its place', async (_, items) => {
    const { put, next } = await open({ placementGrades });
    current().gradebook.items.clear();
    for (const item of items) current().gradebook.items.set(item, '1');
    await put(ada());
    expect(await next(ada())).toMatchObject({ state: 'stuck', reason: 'lineItemGone' });
  });

  it('is not believed to be gone while it can still be read', async () => {
    const { put, next } = await open({ placementGrades });
    current().gradebook.troubles.push(answer(404));
    await put(ada());
    expect(await next(ada())).toMatchObject({ state: 'waiting', reason: 'strangeAnswer' });
    expect(await next(ada())).toMatchObject({ state: 'sent' });
  });
});
