import { describe, expect, it } from 'vitest';
import { START } from './bench.ts';
import { answer, HOUR, ITEM, MINUTE, SECOND, sceneForFile } from './scene.ts';

const { ada, current, open } = sceneForFile();

describe('a mark that a teacher changed in the gradebook', () => {
  it("gives way to the learner's own new finish", async () => {
    const { put, next } = await open();
    await put(ada());
    await next(ada());
    current().gradebook.override('ada', 3);
    current().clock.advance(HOUR);
    await put(
      ada({ attempt: 'attempt-2', scoreGiven: 9, timestamp: new Date(current().clock.now) }),
    );
    expect(await next(ada())).toMatchObject({ state: 'sent' });
    expect(current().gradebook.reads).toEqual([]);
  });

  it.each([
    [3, 'changedOnPlatform'],
    [null, 'removedOnPlatform'],
  ] as const)('is not overwritten by a later try of ours (%s)', async (typed, reason) => {
    const { put, next, outbox } = await open();
    await put(ada());
    await next(ada());
    current().clock.advance(HOUR);
    await put(
      ada({ attempt: 'attempt-2', scoreGiven: 9, timestamp: new Date(current().clock.now) }),
    );
    current().gradebook.troubles.push(answer(503));
    await next(ada());
    current().gradebook.override('ada', typed);
    expect(await next(ada())).toMatchObject({ state: 'held', reason });
    expect(current().gradebook.posts).toHaveLength(2);
    const { _id } = await next(ada());
    expect(await outbox.decide(_id, ['held'], true, current().clock.now)).toBe(true);
    current().clock.advance(2 * SECOND);
    current().gradebook.marks.clear();
    expect(await next(ada())).toMatchObject({ state: 'sent', lastSent: { revision: 2 } });
  });

  it('is overwritten once somebody has decided so, however many tries that takes', async () => {
    const { put, next, outbox } = await open();
    current().gradebook.troubles.push({ kind: 'cut' });
    await put(ada());
    await next(ada());
    current().gradebook.override('ada', 3);
    const { _id, state } = await next(ada());
    expect(state).toBe('held');
    await outbox.decide(_id, ['held'], true, current().clock.now);
    current().gradebook.troubles.push(answer(503));
    expect(await next(ada())).toMatchObject({ state: 'waiting', overrule: true });
    expect(await next(ada())).toMatchObject({ state: 'sent', overrule: false });
    await put(ada({ attempt: 'attempt-2', scoreGiven: 9 }));
    current().gradebook.troubles.push(answer(503));
    await next(ada());
    current().gradebook.override('ada', 1);
    expect(await next(ada())).toMatchObject({ state: 'held' });
  });

  it('holds a first mark that waits while the teacher typed one in', async () => {
    const { put, next } = await open();
    current().gradebook.troubles.push({ kind: 'cut' });
    await put(ada());
    await next(ada());
    current().gradebook.override('ada', 10);
    expect(await next(ada())).toMatchObject({ state: 'held', reason: 'changedOnPlatform' });
  });

  it('is looked at first when somebody asks for another try', async () => {
    const { put, next, outbox } = await open();
    current().gradebook.troubles.push(answer(403));
    await put(ada());
    const { _id } = await next(ada());
    current().gradebook.override('ada', 2);
    expect(await outbox.decide(_id, ['stuck'], false, current().clock.now)).toBe(true);
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
    current().gradebook.marks.set(`${ITEM} ada`, later(7.5));
    await put(ada());
    expect(await next(ada())).toMatchObject({ state: 'sent', lastStatus: 409 });
    expect(current().gradebook.posts).toHaveLength(1);
  });

  it('and shows another mark holds ours', async () => {
    const { put, next } = await open();
    current().gradebook.marks.set(`${ITEM} ada`, later(2));
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
    const mark = current().gradebook.mark('ada');
    if (mark) mark.second = Math.floor(START / SECOND) + 3600;
    current().clock.advance(MINUTE);
    await put(
      ada({ attempt: 'attempt-2', scoreGiven: 9, timestamp: new Date(current().clock.now) }),
    );
    expect(await next(ada())).toMatchObject({ state: 'waiting', reason: 'platformHasNewer' });
    await next(ada());
    expect(await row(ada())).toMatchObject({ state: 'sent', lastSent: { revision: 2 } });
    expect(current().gradebook.mark('ada')).toMatchObject({ score: 9 });
  });
});
