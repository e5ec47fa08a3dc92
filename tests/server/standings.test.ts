import { expect, test } from 'vitest';
import { activityStore } from '../../server/activities/store.ts';
import { createStandings } from '../../server/attempts/standings.ts';
import { attemptStore } from '../../server/attempts/store.ts';
import type { Session } from '../../server/sessions/schema.ts';
import { databaseForFile } from '../support/database.ts';
import { movesOf, numbered, ONE_ROW } from './page.ts';

const database = databaseForFile();

const PERSON = { registration: 'registration', deployment: '1', subject: '4' };

/** A begun attempt, memory of it, and how often memory took the whole record. */
async function remembered() {
  const { connection } = database();
  const attempts = attemptStore(connection);
  const activities = activityStore(connection);
  const activity = crypto.randomUUID();
  await activities.add({
    ...{ activity, registration: PERSON.registration, title: 'One row', problems: [ONE_ROW] },
    ...{ release: 'onFinish', points: '10', createdAt: new Date() },
  });
  const key = { ...PERSON, placement: 'placement', activity };
  const beginning = { context: 'course', version: 1, trial: false };
  const attempt = await attempts.begin(key, beginning, new Date());
  const reads = { whole: 0 };
  const watched: typeof attempts = {
    ...attempts,
    find: (owner) => {
      reads.whole += 1;
      return attempts.find(owner);
    },
  };
  const session = { ...PERSON, attempt } as Session;
  const addition = (base: number, count: number) => ({
    base,
    // biome-ignore lint/suspicious/noExplicitAny: as the wire schema and the engine have read them.
    entries: numbered(movesOf(ONE_ROW).slice(base, base + count)) as any[],
    problemsFinished: 0,
  });
  return { attempts, session, addition, reads, standings: createStandings(watched, activities) };
}

test('a record that is no longer than memory is not replayed, however often it is asked for', async () => {
  const { standings, session, reads } = await remembered();
  const first = await standings.open(session);
  for (let time = 0; time < 20; time += 1) expect(await standings.open(session, true)).toBe(first);
  expect(reads.whole).toBe(1);
});

test('a record that has grown since is read again when it is asked, and then remembered', async () => {
  const { attempts, standings, session, addition, reads } = await remembered();
  await standings.open(session);
  await attempts.append({ ...PERSON, id: session.attempt }, addition(0, 2));
  expect((await standings.open(session))?.standing.length).toBe(0);
  expect((await standings.open(session, true))?.standing.length).toBe(2);
  expect((await standings.open(session, true))?.standing.length).toBe(2);
  expect(reads.whole).toBe(2);
});

test('memory of one person is shown to nobody else, whatever attempt they name', async () => {
  const { standings, session } = await remembered();
  await standings.open(session);
  const other = { ...session, subject: '5' };
  expect(await standings.open(other)).toBeNull();
  expect(await standings.open(other, true)).toBeNull();
});
