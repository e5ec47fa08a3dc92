import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { databaseForFile } from '../support/database.ts';
import { type Answer, appForFile, startApp, type TestApp } from '../support/server.ts';
import { attemptOf, movesOf, numbered, ONE_ROW, Page, type Sent, TWO_ROWS } from './page.ts';

const database = databaseForFile();
const app = appForFile(database);

async function begun(problems = [ONE_ROW]) {
  const activity = await app().activity(problems);
  const token = await app().token({ custom: { activity } });
  const attempt = await attemptOf(app(), token);
  return { token, attempt, path: `/api/attempts/${attempt.id}/actions` };
}

const keysOf = (entries: readonly Pick<Sent, 'client' | 'n'>[]) =>
  entries.map(({ client, n }) => `${client} ${n}`);

describe('an attempt', () => {
  test('is there, empty, when a learner comes in', async () => {
    const { attempt } = await begun([ONE_ROW, TWO_ROWS]);
    expect(attempt).toMatchObject({
      title: 'Two rows',
      problems: [ONE_ROW, TWO_ROWS],
      length: 0,
      actions: [],
      trial: false,
      graded: true,
      release: 'onFinish',
    });
    expect(attempt.person).toMatch(/^[\w-]{22}$/);
  });

  test('gives back every action as it was done', async () => {
    const { token, path } = await begun();
    const actions = numbered(movesOf(ONE_ROW).slice(0, 5));
    const answer = await app().post(token, path, { base: 0, actions });
    expect(answer.body).toEqual({
      length: 5,
      acknowledged: { [actions[0]!.client]: 4 },
      aside: [],
      finished: false,
    });
    const { actions: kept, length } = await attemptOf(app(), token);
    expect({ kept, length }).toEqual({ kept: actions, length: 5 });
  });

  test('is carried on by the same person in another session', async () => {
    const activity = await app().activity([ONE_ROW]);
    const launch = { subject: 'ada', custom: { activity } };
    const first = await attemptOf(app(), await app().token(launch));
    const second = await attemptOf(app(), await app().token(launch));
    expect(second).toEqual(first);
  });

  test('is another one for another person, deployment or place', async () => {
    const activity = await app().activity([ONE_ROW]);
    const custom = { activity };
    const launches = [
      { subject: 'bo', custom },
      { subject: 'cleo', custom },
      { subject: 'bo', custom, deployment: '2' },
      { subject: 'bo', custom, resourceLink: { id: 'link-2', title: null } },
    ];
    const tokens = await Promise.all(launches.map((launch) => app().token(launch)));
    const attempts = await Promise.all(tokens.map((token) => attemptOf(app(), token)));
    expect(new Set(attempts.map(({ id }) => id)).size).toBe(launches.length);
  });

  test('stays at the version of the activity with which it began', async () => {
    const activity = await app().activity([ONE_ROW]);
    const launch = { subject: 'dov', custom: { activity } };
    await app().token(launch);
    const { activityStore } = await import('../../server/activities/store.ts');
    const content = { registration: 'harbour-lane', title: 'Changed', points: '10' };
    await activityStore(database().connection).add({
      ...content,
      ...{ activity, problems: [TWO_ROWS], release: 'onFinish', createdAt: new Date() },
    });
    expect(await attemptOf(app(), await app().token(launch))).toMatchObject({
      title: 'Two rows',
      problems: [ONE_ROW],
    });
  });
});

describe('a batch', () => {
  test('sent again is acknowledged again and applied once', async () => {
    const { token, path } = await begun();
    const message = { base: 0, actions: numbered(movesOf(ONE_ROW).slice(0, 4)) };
    const first = await app().post(token, path, message);
    const second = await app().post(token, path, message);
    expect(second).toMatchObject({ status: 200, body: first.body });
    expect((await attemptOf(app(), token)).length).toBe(4);
  });

  test('sent 50 times at once is applied once, by one server or by two', async () => {
    const { token, path } = await begun();
    const other = await startApp(database());
    const message = { base: 0, actions: numbered(movesOf(ONE_ROW).slice(0, 6)) };
    const servers: TestApp[] = Array.from({ length: 50 }, (_, i) => (i % 2 ? other.app : app()));
    const answers = await Promise.all(servers.map((server) => server.post(token, path, message)));
    await other.close();
    expect(answers.map(({ status }) => status)).toEqual(Array(50).fill(200));
    for (const { body } of answers) expect(body).toEqual(answers[0]!.body);
    expect((await attemptOf(app(), token)).actions).toEqual(message.actions);
  });

  test('with some seen and some new adds what is new', async () => {
    const { token, path } = await begun();
    const actions = numbered(movesOf(ONE_ROW).slice(0, 6));
    await app().post(token, path, { base: 0, actions: actions.slice(0, 4) });
    const answer = await app().post(token, path, { base: 4, actions });
    expect(answer).toMatchObject({ status: 200, body: { length: 6 } });
    expect((await attemptOf(app(), token)).actions).toEqual(actions);
  });

  test('on an outdated list is answered with what is missing, and nothing of it is kept', async () => {
    const { token, path } = await begun();
    const [here, there] = [movesOf(ONE_ROW).slice(0, 3), movesOf(ONE_ROW).slice(0, 2)];
    const ours = numbered(here);
    await app().post(token, path, { base: 0, actions: ours });
    const answer = await app().post(token, path, { base: 1, actions: numbered(there) });
    expect(answer.status).toBe(409);
    expect(answer.body).toMatchObject({ error: { code: 'moved' }, length: 3 });
    expect(answer.body.actions).toEqual(ours.slice(1));
    expect((await attemptOf(app(), token)).length).toBe(3);
  });

  test('by a server whose memory is behind what another one kept is refused the same way', async () => {
    const { token, path } = await begun();
    const other = await startApp(database());
    const [first, second, third] = movesOf(ONE_ROW);
    const ours = [...numbered([first]), ...numbered([second])];
    await app().post(token, path, { base: 0, actions: ours.slice(0, 1) });
    await other.app.post(token, path, { base: 1, actions: ours.slice(1) });
    const answer = await app().post(token, path, { base: 1, actions: numbered([third]) });
    await other.close();
    expect(answer).toMatchObject({ status: 409, body: { length: 2, actions: ours.slice(1) } });
    expect((await attemptOf(app(), token)).actions).toEqual(ours);
  });

  test('from an outdated page whose work has all arrived is acknowledged, not refused', async () => {
    const { token, path } = await begun();
    const message = { base: 0, actions: numbered(movesOf(ONE_ROW).slice(0, 2)) };
    await app().post(token, path, message);
    await app().post(token, path, { base: 2, actions: numbered([{ do: 'check' }]) });
    expect(await app().post(token, path, message)).toMatchObject({
      status: 200,
      body: { length: 3 },
    });
  });

  test('keeps beside what real material could not do', async () => {
    const { token, path } = await begun();
    const impossible = { do: 'slide', from: [0, 0], to: [0, 1] };
    const actions = numbered([impossible, movesOf(ONE_ROW)[0]]);
    const answer = await app().post(token, path, { base: 0, actions });
    const client = actions[0]!.client;
    expect(answer.body).toMatchObject({ length: 2, aside: [{ client, n: 0 }] });
    const { actions: kept } = await attemptOf(app(), token);
    expect(kept[0]).toEqual({ ...actions[0], aside: 'emptyPile' });
    expect(kept[1]).not.toHaveProperty('aside');
  });

  test('keeps beside what comes after the finish', async () => {
    const { token, path } = await begun();
    const moves = movesOf(ONE_ROW);
    await app().post(token, path, { base: 0, actions: numbered(moves) });
    const late = numbered([{ do: 'liftTile', edge: 'bottom', index: 0 }]);
    const answer = await app().post(token, path, { base: moves.length, actions: late });
    expect(answer.body).toMatchObject({ aside: [{ n: 0 }], finished: true });
    const { actions: kept } = await attemptOf(app(), token);
    expect(kept.at(-1)).toEqual({ ...late[0], aside: 'finished' });
  });
});

/** Judged ∪ aside = everything done, once, in the order in which each page did it. */
test('two devices with unsent work lose nothing and double nothing', async () => {
  const moves = movesOf(TWO_ROWS);
  const slip = { do: 'layBars', square: [0, 0], kind: 9, count: 2 };
  const part = fc.array(fc.constantFrom(...moves, slip), { minLength: 1, maxLength: 25 });
  const send = fc.record({ page: fc.nat(1), most: fc.integer({ min: 1, max: 9 }) });
  await fc.assert(
    fc.asyncProperty(part, part, fc.array(send, { maxLength: 12 }), async (one, two, sends) => {
      const { token, attempt } = await begun([TWO_ROWS]);
      const pages = [new Page(app(), token, attempt.id), new Page(app(), token, attempt.id)];
      pages[0]!.act(one);
      pages[1]!.act(two);
      for (const { page, most } of sends)
        if (pages[page]!.unsent.length) await pages[page]!.send(most);
      await Promise.all(pages.map((page) => page.sendAll(7)));
      const { actions: kept } = await attemptOf(app(), token);
      expect(kept.length).toBe(one.length + two.length);
      for (const { client, done } of pages) {
        const own = (kept as Sent[]).filter((entry) => entry.client === client);
        expect(keysOf(own)).toEqual(keysOf(done));
        expect(own.map(({ action }) => action)).toEqual(done.map(({ action }) => action));
      }
    }),
    { numRuns: 25 },
  );
});

test('a server that was restarted goes on exactly where the other stopped', async () => {
  const { token, attempt, path } = await begun([TWO_ROWS]);
  const moves = movesOf(TWO_ROWS);
  const sent = numbered(moves);
  await app().post(token, path, { base: 0, actions: sent.slice(0, 10) });
  const other = await startApp(database());
  const rest = { base: 10, actions: sent.slice(10) };
  const answer: Answer = await other.app.post(token, path, rest);
  await other.close();
  expect(answer.body).toMatchObject({ length: moves.length, finished: true, aside: [] });
  const result = await app().get(token, `/api/attempts/${attempt.id}/result`);
  expect(result.body).toMatchObject({ released: true, score: { fraction: '1' } });
});
