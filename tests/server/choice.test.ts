import { describe, expect, test } from 'vitest';
import { readActivity } from '../../server/activities/file.ts';
import { databaseForFile } from '../support/database.ts';
import { appForFile, startApp } from '../support/server.ts';
import { attemptOf, movesOf, numbered, ONE_ROW, Page, TWO_ROWS } from './page.ts';

const database = databaseForFile();
const app = appForFile(database);

async function begun() {
  const activity = await app().activity([ONE_ROW, TWO_ROWS], 'onFinish', { choice: true });
  const place = { resourceLink: { id: activity, title: null }, custom: { activity } };
  const launch = { subject: 'ada', ...place };
  const token = await app().token(launch);
  const { id } = await attemptOf(app(), token);
  const choose = (problem: unknown, by = app()) =>
    by.post(token, `/api/attempts/${id}/choice`, { problem });
  return { place, launch, token, id, choose };
}

describe('an activity that lets the learner choose', () => {
  test.each([
    [[ONE_ROW], false],
    [[ONE_ROW, TWO_ROWS], true],
    [[ONE_ROW, TWO_ROWS, ONE_ROW], true],
    [[ONE_ROW, TWO_ROWS, ONE_ROW, TWO_ROWS], false],
  ])('offers two or three problems: %#', (problems, ok) => {
    const file = { registration: 'harbour-lane', title: 'One of these', problems };
    const read = readActivity({ ...file, choice: true });
    expect(read.ok).toBe(ok);
    expect(read.ok || read.complaints).toEqual(ok || ['problems: a choice is among 2 to 3']);
    expect(readActivity(file)).toMatchObject({ ok: true, value: { choice: false } });
  });
});

describe('an attempt at it', () => {
  test('has no problem before one is picked, and takes no action', async () => {
    const { token, id } = await begun();
    expect(await attemptOf(app(), token)).toMatchObject({
      problems: [],
      choices: [ONE_ROW, TWO_ROWS],
      length: 0,
    });
    const actions = numbered(movesOf(ONE_ROW).slice(0, 1));
    const answer = await app().post(token, `/api/attempts/${id}/actions`, { base: 0, actions });
    expect(answer).toMatchObject({ status: 400, body: { error: { code: 'noSuchProblem' } } });
  });

  test('is the one that was picked, remembered for the next time', async () => {
    const { launch, choose } = await begun();
    const { status, body } = await choose(1);
    expect({ status, ...body.attempt }).toMatchObject({
      status: 200,
      problems: [TWO_ROWS],
      choices: [],
    });
    const again = await attemptOf(app(), await app().token(launch));
    expect(again).toMatchObject({ id: body.attempt.id, problems: [TWO_ROWS], choices: [] });
  });

  test('keeps the first choice under a double click, another device and another server process', async () => {
    const { token, choose } = await begun();
    const other = await startApp(database());
    const first = await choose(0);
    const later = await Promise.all([choose(0), choose(1), choose(1, other.app)]);
    await other.close();
    for (const { status, body } of later)
      expect({ status, body }).toEqual({ status: 200, body: first.body });
    expect(await attemptOf(app(), token)).toMatchObject({ problems: [ONE_ROW] });
  });

  test('picked twice at the same moment is one and the same for both', async () => {
    const { choose } = await begun();
    const answers = await Promise.all(Array.from({ length: 20 }, (_, i) => choose(i % 2)));
    expect(new Set(answers.map(({ body }) => JSON.stringify(body.attempt))).size).toBe(1);
  });

  test.each([[2], [-1], [0.5], ['0'], [null]])(
    'refuses what is not among them: %j',
    async (problem) => {
      const { token, choose } = await begun();
      expect((await choose(problem)).status).toBe(400);
      expect(await attemptOf(app(), token)).toMatchObject({ problems: [] });
    },
  );

  test('is nobody else’s to choose', async () => {
    const { id, token, place } = await begun();
    const stranger = await app().token({ subject: 'bo', ...place });
    const { status } = await app().post(stranger, `/api/attempts/${id}/choice`, { problem: 0 });
    expect(status).toBe(404);
    expect(await attemptOf(app(), token)).toMatchObject({ problems: [] });
  });

  test('is worked, scored and finished with that problem alone, on a server that had it open before', async () => {
    const { token, id, place } = await begun();
    const other = await startApp(database());
    // This server holds the attempt in memory as it was before the choice.
    const early = numbered(movesOf(ONE_ROW).slice(0, 1));
    await other.app.post(token, `/api/attempts/${id}/actions`, { base: 0, actions: early });
    await app().post(token, `/api/attempts/${id}/choice`, { problem: 1 });
    const page = new Page(other.app, token, id);
    page.act(movesOf(TWO_ROWS));
    await page.sendAll();
    const { body } = await other.app.get(token, `/api/attempts/${id}/result`);
    await other.close();
    expect(body).toMatchObject({ released: true, score: { fraction: '1' } });
    expect(body.problems).toHaveLength(1);
    const teacher = await app().token({ role: 'teacher', ...place });
    const table = await app().get(teacher, '/api/class');
    expect(table.body.activity.problems).toEqual([ONE_ROW, TWO_ROWS]);
    expect(table.body.children).toEqual([
      expect.objectContaining({ state: 'released', problemsFinished: 1, problems: 1 }),
    ]);
  });
});

test('an activity without a choice cannot be chosen from', async () => {
  const activity = await app().activity([ONE_ROW, TWO_ROWS]);
  const token = await app().token({ custom: { activity } });
  const { id } = await attemptOf(app(), token);
  const { body } = await app().post(token, `/api/attempts/${id}/choice`, { problem: 1 });
  expect(body.attempt).toMatchObject({ problems: [ONE_ROW, TWO_ROWS], choices: [] });
});
