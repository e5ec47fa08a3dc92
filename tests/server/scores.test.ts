import { describe, expect, test } from 'vitest';
import { databaseForFile } from '../support/database.ts';
import { appForFile, type launchOf } from '../support/server.ts';
import { attemptOf, movesOf, ONE_ROW, Page, TWO_ROWS } from './page.ts';

const database = databaseForFile();
const app = appForFile(database);

const rowsOf = (attempt: string) =>
  database().connection.collection('deliveries').find({ attempt }).toArray();

async function begun(
  changes: Parameters<typeof launchOf>[0] = {},
  { problems = [ONE_ROW], release = 'onFinish' as 'onFinish' | 'byTeacher' } = {},
) {
  const activity = await app().activity(problems, release);
  const link = { id: activity, title: null };
  const token = await app().token({ resourceLink: link, custom: { activity }, ...changes });
  const { id } = await attemptOf(app(), token);
  const result = async () => (await app().get(token, `/api/attempts/${id}/result`)).body;
  return { activity, link, token, id, result, page: new Page(app(), token, id) };
}

describe('finished work', () => {
  test('is scored and on its way to the gradebook once, with the batch that finishes it', async () => {
    const { id, page, result } = await begun({ subject: 'ada' });
    page.act(movesOf(ONE_ROW));
    await page.sendAll(5);
    const rows = await rowsOf(id);
    expect(rows).toHaveLength(1);
    expect(rows[0]).toMatchObject({
      subject: 'ada',
      lineitem: 'http://127.0.0.1:9/lineitems/1',
      desired: {
        revision: 1,
        scoreGiven: 100,
        scoreMaximum: 100,
        comment: '1 of 1 problem finished.',
      },
    });
    expect(await result()).toMatchObject({
      released: true,
      // The list of steps of 34 × 2: 3 tiles, 2 laid, 2 counted, 1 said, 2 settled, 2 read.
      score: { awarded: '12', available: '12', fraction: '1' },
      problems: [{ complete: true }],
    });
    expect((await result()).delivery.state).not.toBe('none');
  });

  test('whose last batch comes many times at once is on its way once', async () => {
    const { id, page, token } = await begun();
    page.act(movesOf(ONE_ROW));
    const message = { base: 0, actions: page.unsent };
    const path = `/api/attempts/${id}/actions`;
    const answers = await Promise.all(
      Array.from({ length: 20 }, () => app().post(token, path, message)),
    );
    for (const { status, body } of answers) {
      expect({ status, finished: body.finished }).toEqual({ status: 200, finished: true });
    }
    const rows = await rowsOf(id);
    expect(rows.map(({ desired }) => desired.revision)).toEqual([1]);
  });

  test('with a slip put right is told so in one line', async () => {
    const { id, page } = await begun();
    const moves = movesOf(ONE_ROW);
    const product = moves.findIndex((move) => move.do === 'write');
    const right = moves[product] as { digit: number };
    const slip = { ...right, digit: (right.digit + 1) % 10 };
    page.act([...moves.slice(0, product), slip, { do: 'check' }, ...moves.slice(product)]);
    await page.sendAll();
    // One of 12 steps is corrected (0.6): 11.6 of 12.
    expect((await rowsOf(id))[0]!.desired).toMatchObject({
      scoreGiven: 96.67,
      comment: '1 of 1 problem finished; 1 step put right.',
    });
  });

  test('counts over all problems, and only when the last is finished', async () => {
    const { id, page, result } = await begun({}, { problems: [ONE_ROW, TWO_ROWS] });
    page.act(movesOf(ONE_ROW), 0);
    await page.sendAll();
    expect(await result()).toMatchObject({ released: false, score: null, problems: [] });
    expect((await result()).delivery).toEqual({ state: 'none', reason: 'notFinished' });
    expect(await rowsOf(id)).toHaveLength(0);
    const unread = movesOf(TWO_ROWS).filter(
      (move) => !(move.do === 'write' && 'place' in move && move.place === 2),
    );
    page.act(unread, 1);
    await page.sendAll();
    // 27 × 34: 4 tiles, 4 laid, 4 counted, 2 said, 1 slid, 3 settled, 3 read, of which one was left out.
    expect((await result()).score).toEqual({ awarded: '32', available: '33', fraction: '32/33' });
    expect((await rowsOf(id))[0]!.desired).toMatchObject({
      scoreGiven: 96.97,
      comment: '2 of 2 problems finished; 1 step not right.',
    });
  });

  test.each<[string, Parameters<typeof launchOf>[0], string]>([
    ["a teacher's trial", { role: 'teacher' }, 'trial'],
    ["a test user's", { testUser: true }, 'trial'],
    ['without a line item', { grades: null }, 'noLineItem'],
    [
      'where the platform takes no scores',
      { grades: { lineitem: 'http://127.0.0.1:9/1', lineitems: null, scopes: [] } },
      'noScope',
    ],
  ])('that is %s goes to no gradebook', async (_what, changes, reason) => {
    const { id, page, result } = await begun(changes);
    page.act(movesOf(ONE_ROW));
    await page.sendAll();
    expect(await rowsOf(id)).toHaveLength(0);
    expect(await result()).toMatchObject({
      score: { fraction: '1' },
      delivery: { state: 'none', reason },
    });
  });

  test('is not kept at all if its score cannot be kept', async () => {
    const { token, id, page } = await begun({
      grades: {
        lineitem: 'http://127.0.0.1:9/1',
        lineitems: null,
        scopes: ['https://purl.imsglobal.org/spec/lti-ags/scope/score'],
      },
    });
    const moves = movesOf(ONE_ROW);
    page.act(moves.slice(0, -1));
    await page.sendAll();
    const { connection } = database();
    await connection.db!.command({
      collMod: 'deliveries',
      validator: { attempt: { $ne: id } },
      validationLevel: 'strict',
    });
    page.act(moves.slice(-1));
    const answer = await page.send();
    await connection.db!.command({ collMod: 'deliveries', validator: {} });
    expect(answer.status).toBe(500);
    expect((await attemptOf(app(), token)).length).toBe(moves.length - 1);
    await page.sendAll();
    expect(await rowsOf(id)).toHaveLength(1);
  });
});

describe('work that the teacher releases', () => {
  test('is hidden, and goes to no gradebook, until then', async () => {
    const { id, link, page, result, activity } = await begun({}, { release: 'byTeacher' });
    page.act(movesOf(ONE_ROW));
    await page.sendAll();
    expect(await result()).toEqual({
      released: false,
      score: null,
      problems: [],
      delivery: { state: 'none', reason: 'notReleased' },
    });
    const place = { resourceLink: link, custom: { activity } };
    const teacher = await app().token({ ...place, role: 'teacher' });
    const release = () => app().post(teacher, '/api/class/release', {});
    expect((await release()).body).toEqual({ released: 1 });
    expect((await release()).body).toEqual({ released: 0 });
    expect(await result()).toMatchObject({ released: true, score: { fraction: '1' } });
    expect(await rowsOf(id)).toHaveLength(1);
  });

  test.each(['assistant', 'learner'] as const)('is not released by %s', async (role) => {
    const { link, activity } = await begun({}, { release: 'byTeacher' });
    const token = await app().token({ resourceLink: link, custom: { activity }, role });
    const answer = await app().post(token, '/api/class/release', {});
    expect(answer).toMatchObject({ status: 403, body: { error: { code: 'notYours' } } });
  });
});

describe("the teacher's table", () => {
  test('shows each child by number, how far it is, and where its mark is', async () => {
    const { activity, link, page } = await begun(
      { subject: 'cleo' },
      { problems: [ONE_ROW, ONE_ROW] },
    );
    const place = { resourceLink: link, custom: { activity } };
    page.act(movesOf(ONE_ROW), 0);
    page.act(movesOf(ONE_ROW), 1);
    await page.sendAll();
    const second = await app().token({ ...place, subject: 'dov' });
    const other = new Page(app(), second, (await attemptOf(app(), second)).id);
    other.act(movesOf(ONE_ROW), 0);
    await other.sendAll();
    await app().token({ ...place, subject: 'esi' });
    await app().token({ ...place, subject: 'nobody', testUser: true });
    const teacher = await app().token({ ...place, subject: 'ms-wren', role: 'teacher' });
    const { body } = await app().get(teacher, '/api/class');
    expect(body.activity).toMatchObject({ title: 'Two rows' });
    expect(body.children).toMatchObject([
      {
        label: 'Child 1',
        state: 'released',
        problemsFinished: 2,
        problems: 2,
        score: { fraction: '1' },
      },
      { label: 'Child 2', state: 'working', problemsFinished: 1, score: null },
      { label: 'Child 3', state: 'notStarted', problemsFinished: 0 },
    ]);
    expect(body.children[0].delivery.state).not.toBe('none');
    expect(body.children[1].delivery).toMatchObject({ state: 'none', reason: 'notFinished' });
    expect(JSON.stringify(body)).not.toMatch(/cleo|dov|esi/);
  });

  test('is not shown to a child', async () => {
    const { token } = await begun();
    expect((await app().get(token, '/api/class')).status).toBe(403);
  });

  test('holds only the children of its own place', async () => {
    await begun({ subject: 'finn' });
    const { link, activity } = await begun({ role: 'teacher' });
    const teacher = await app().token({
      resourceLink: link,
      custom: { activity },
      role: 'teacher',
    });
    expect((await app().get(teacher, '/api/class')).body.children).toEqual([]);
  });
});
