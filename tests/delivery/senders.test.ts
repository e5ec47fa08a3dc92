import { describe, expect, it } from 'vitest';
import { pausesStore } from '../../server/delivery/pauses-store.ts';
import { createPump } from '../../server/delivery/pump.ts';
import type { Outbound } from '../../server/lti/outbound.ts';
import { SILENT, START } from './bench.ts';
import { HOUR, MINUTE, SECOND, sceneForFile } from './scene.ts';

const { ada, current, database, open } = sceneForFile();

describe('several senders', () => {
  it('send one mark once', async () => {
    const benches = await Promise.all(Array.from({ length: 4 }, () => open()));
    await benches[0]?.put(ada());
    await Promise.all(benches.map(({ pump }) => pump.run()));
    expect(current().gradebook.posts).toHaveLength(1);
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
      ...current().outbound,
      send: async (request) => {
        calls += 1;
        most = Math.max(most, calls);
        if (calls === 4) fill();
        await full;
        const sent = await current().outbound.send(request);
        calls -= 1;
        return sent;
      },
    };
    const counting = await Promise.all(benches.map(() => open({ outbound: counted })));
    await Promise.all(counting.map(({ pump }) => pump.run()));
    expect(most).toBe(4);
    expect(new Set(current().gradebook.posts.map(({ subject }) => subject)).size).toBe(30);
    expect(current().gradebook.posts).toHaveLength(30);
  });

  it('do not wait behind the places of a process that died', async () => {
    const { outbox, pauses, grades, placementGrades, put, pump } = await open();
    for (let n = 0; n < 12; n += 1) await put(ada({ subject: `child-${n}` }));
    for (let slot = 0; slot < 4; slot += 1) await outbox.claim('school', slot, current().clock.now);
    await pump.run();
    expect(current().gradebook.posts).toHaveLength(0);
    current().clock.advance(30 * SECOND);
    await createPump({
      outbox,
      pauses,
      grades,
      placementGrades,
      log: SILENT,
      clock: current().clock.read,
    }).run();
    expect(new Set(current().gradebook.posts.map(({ subject }) => subject)).size).toBe(12);
  });

  it('cannot finish what another has taken over', async () => {
    const { outbox, put, row, pump } = await open();
    await put(ada());
    const slow = await outbox.claim('school', 0, current().clock.now);
    current().clock.advance(30 * SECOND);
    await pump.run();
    if (slow === null) throw new Error('nothing claimed');
    expect(await outbox.keep(slow.row, slow.claim, current().clock.now)).toBe(false);
    await outbox.finish(slow.row, slow.claim, {}, { state: 'stuck' }, current().clock.now);
    expect((await row(ada())).state).toBe('sent');
  });

  it('leave a mark to be sent that came while the one before was under way', async () => {
    const { outbound } = current();
    const slow: Outbound = {
      ...outbound,
      send: async (request) => {
        const sent = await outbound.send(request);
        if (current().gradebook.posts.length === 1)
          await put(ada({ attempt: 'attempt-2', scoreGiven: 9 }));
        return sent;
      },
    };
    const { put, pump, row, next } = await open({ outbound: slow });
    await put(ada());
    await pump.run();
    expect(await row(ada())).toMatchObject({ state: 'waiting', lastSent: { revision: 1 } });
    expect(await next(ada())).toMatchObject({ state: 'sent', lastSent: { revision: 2 } });
    expect(current().gradebook.posts.map(({ body }) => body.scoreGiven)).toEqual([7.5, 9]);
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
      clock: current().clock.read,
    });
    await pump.run();
    current().clock.advance(2 * SECOND);
    await pump.run();
    expect(current().gradebook.posts.map(({ body }) => body.scoreGiven)).toEqual([9]);
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
