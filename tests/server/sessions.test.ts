import { beforeEach, describe, expect, test } from 'vitest';
import type { Role } from '../../server/lti/launch.ts';
import { platformStore } from '../../server/platforms/store.ts';
import { databaseForFile } from '../support/database.ts';
import { appForFile, launchOf } from '../support/server.ts';
import { attemptOf, ONE_ROW } from './page.ts';

const database = databaseForFile();
const app = appForFile(database);
const MINUTE = 60_000;

beforeEach(() => {
  app().clock.offset = 0;
});

const renew = (token: string) => app().post(token, '/api/sessions/renew', {});
const opens = async (token: string) => (await app().get(token, '/api/attempt')).status === 200;
const wait = (minutes: number) => {
  app().clock.offset += minutes * MINUTE;
};

async function learner(changes = {}) {
  const activity = await app().activity([ONE_ROW]);
  return app().token({ custom: { activity }, ...changes });
}

async function admitted(changes: Parameters<typeof launchOf>[0] = {}) {
  const activity = await app().activity([ONE_ROW]);
  const launch = launchOf({ custom: { activity }, ...changes });
  return (await app().placeweave.admit(launch)).value;
}

describe('a session', () => {
  test('ends within half a minute once its platform is suspended, and goes on when that is resumed', async () => {
    const { connection } = database();
    const platforms = platformStore(connection);
    const { registration } = launchOf();
    const stored = connection.collection<{ _id: string; status: string }>('registrations');
    await stored.insertOne({ _id: registration, status: 'active' });
    const { token } = await admitted();
    expect(await opens(token)).toBe(true);
    expect(await platforms.setStatus(registration, 'suspended')).toBe(true);
    wait(0.5);
    expect(await app().get(token, '/api/attempt')).toMatchObject({ status: 401 });
    await platforms.setStatus(registration, 'active');
    expect(await opens(token)).toBe(true);
    await stored.deleteOne({ _id: registration });
    expect(await platforms.setStatus('nobody', 'suspended')).toBe(false);
  });

  test('lasts an hour', async () => {
    const { token, expiresIn } = await admitted();
    expect(expiresIn).toBe(3600);
    wait(59);
    expect(await opens(token)).toBe(true);
    wait(61);
    expect(await app().get(token, '/api/attempt')).toMatchObject({
      status: 401,
      body: { error: { code: 'noSession' } },
    });
  });

  test('never ends under an open page that renews it', async () => {
    const token = await learner();
    for (let minutes = 0; minutes < 24 * 60; minutes += 50) {
      wait(50);
      expect(await renew(token)).toMatchObject({ status: 200, body: { token, expiresIn: 3600 } });
    }
    expect(await opens(token)).toBe(true);
  });

  test('is also kept alive by being used', async () => {
    const token = await learner();
    for (const _ of [1, 2, 3]) {
      wait(45);
      expect(await opens(token)).toBe(true);
    }
  });

  test('that has ended cannot be renewed', async () => {
    const token = await learner();
    wait(61);
    expect((await renew(token)).status).toBe(401);
    expect(await opens(token)).toBe(false);
  });

  test('of a role that the last launch took away is not renewed', async () => {
    const activity = await app().activity([ONE_ROW]);
    const launch = { subject: 'ms-wren', custom: { activity } };
    const teacher = await app().token({ ...launch, role: 'teacher' });
    await app().token({ ...launch, role: 'learner' });
    expect((await renew(teacher)).status).toBe(401);
  });

  test.each([
    ['missing', null],
    ['made up', 'a'.repeat(43)],
    ['of the wrong form', "' OR 1=1"],
  ])('is not opened by a token that is %s', async (_how, token) => {
    expect((await app().get(token, '/api/attempt')).status).toBe(401);
  });

  test('is not kept with its token', async () => {
    const token = await learner();
    const kept = await database().connection.collection('sessions').find().toArray();
    expect(kept.length).toBeGreaterThan(0);
    expect(JSON.stringify(kept)).not.toContain(token);
  });
});

describe('who comes in', () => {
  test.each<[Role, string]>([
    ['learner', 'work'],
    ['teacher', 'class'],
    ['assistant', 'class'],
    ['administrator', 'class'],
    ['mentor', 'message'],
    ['guest', 'message'],
  ])('as %s sees %s', async (role, view) => {
    expect((await admitted({ role })).view).toBe(view);
  });

  test.each<[string, Parameters<typeof launchOf>[0]]>([
    ['a guest', { role: 'guest', subject: null, resourceLink: { id: 'for-guests', title: null } }],
    ['a mentor', { role: 'mentor', resourceLink: { id: 'for-mentors', title: null } }],
  ])('as %s gets a plain sentence, no session, and leaves nothing', async (_who, changes) => {
    const before = await countAll();
    const { token, message } = await admitted(changes);
    expect(token).toBe('');
    expect(message?.text).toMatch(/^[A-Z].*\.$/);
    expect(await countAll()).toEqual(before);
  });

  async function countAll() {
    const names = ['sessions', 'enrolments', 'placements', 'attempts'];
    return Promise.all(
      names.map((name) => database().connection.collection(name).countDocuments()),
    );
  }

  test('to a place without an activity is told what the teacher can do', async () => {
    const link = { resourceLink: { id: 'bare', title: null }, custom: {} };
    const { value } = await app().placeweave.admit(launchOf({ ...link, role: 'teacher' }));
    expect(value).toMatchObject({ view: 'message', message: { code: 'noActivity' } });
    expect(value.message?.text).toContain('custom parameter "activity"');
  });

  test('to an activity of another platform is told so', async () => {
    const link = { resourceLink: { id: 'stolen', title: null }, registration: 'another-school' };
    const activity = await app().activity([ONE_ROW]);
    const { value } = await app().placeweave.admit(launchOf({ ...link, custom: { activity } }));
    expect(value).toMatchObject({ view: 'message', message: { code: 'unknownActivity' } });
  });

  test('with the same launch many times at once has one enrolment, place and attempt', async () => {
    const activity = await app().activity([ONE_ROW]);
    const launch = launchOf({
      subject: 'esi',
      resourceLink: { id: 'rush', title: null },
      custom: { activity },
    });
    const all = await Promise.all(Array.from({ length: 20 }, () => app().placeweave.admit(launch)));
    const attempts = await Promise.all(all.map(({ value }) => attemptOf(app(), value.token)));
    expect(new Set(attempts.map(({ id }) => id)).size).toBe(1);
    const { connection } = database();
    expect(await connection.collection('enrolments').countDocuments({ subject: 'esi' })).toBe(1);
    expect(await connection.collection('placements').countDocuments({ resourceLink: 'rush' })).toBe(
      1,
    );
  });

  test.each<[string, Parameters<typeof launchOf>[0]]>([
    ['a teacher', { role: 'teacher' }],
    ['a test user', { testUser: true }],
  ])('as %s can try the work, and it counts for nothing', async (_who, changes) => {
    const token = await learner(changes);
    expect(await attemptOf(app(), token)).toMatchObject({ trial: true, graded: false });
  });
});

describe('a place', () => {
  const place = { id: 'refreshed', title: null };
  const found = () =>
    database().connection.collection('placements').findOne({ resourceLink: place.id });

  test('knows what the platform said last', async () => {
    const activity = await app().activity([ONE_ROW]);
    const launch = { resourceLink: place, custom: { activity } };
    const grades = { lineitem: 'https://lms.test/a', lineitems: null, scopes: ['score'] };
    await app().token({ ...launch, grades, roster: { url: 'https://lms.test/names' } });
    expect(await found()).toMatchObject({
      lineitem: grades.lineitem,
      roster: 'https://lms.test/names',
    });
    await app().token({ ...launch, grades: null });
    expect(await found()).toMatchObject({ lineitem: null, scopes: [], roster: null });
  });

  test('keeps its activity when a launch names none', async () => {
    const activity = await app().activity([ONE_ROW]);
    await app().token({ resourceLink: place, custom: { activity } });
    await app().token({ resourceLink: place, custom: {} });
    expect(await found()).toMatchObject({ activity });
  });
});
