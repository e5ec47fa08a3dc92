import { execFile } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { beforeEach, describe, expect, it } from 'vitest';
import { createOutbound } from '../../server/lti/outbound.ts';
import { databaseForFile } from '../support/database.ts';
import { bench, Clock, markOf } from './bench.ts';
import { Gradebook, serve } from './gradebook.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const ITEM = '/2/lineitems/2/lineitem';
const database = databaseForFile();

/** The command as an administrator types it. */
function deliveries(...words: string[]): Promise<{ code: number; out: string; err: string }> {
  const env = { ...process.env, NODE_ENV: 'test', PLACEWEAVE_MONGODB_URI: database().uri };
  const command = ['--import', 'tsx', 'server/cli/deliveries.ts', ...words];
  return new Promise((done) => {
    execFile(process.execPath, command, { cwd: ROOT, env }, (error, out, err) =>
      done({ code: error ? Number(error.code) : 0, out, err }),
    );
  });
}

beforeEach(async () => {
  for (const name of ['deliveries', 'deliverypauses'])
    await database().connection.collection(name).deleteMany({});
});

/** Ada's mark is held, Bo's is stuck, Cleo's waits, Dov's has arrived. */
async function scene() {
  const clock = new Clock();
  const gradebook = new Gradebook(clock.read);
  const school = await serve(gradebook);
  const outbound = createOutbound({ production: false });
  const desk = await bench(database().connection, { outbound, clock });
  const mark = (subject: string) => markOf(`${school.origin}${ITEM}?type_id=1`, { subject });
  gradebook.strangers.add('bo');
  gradebook.troubles.push({ kind: 'cut' });
  await desk.put(mark('ada'));
  await desk.next(mark('ada'));
  gradebook.override('ada', 3);
  await desk.next(mark('ada'));
  for (const subject of ['bo', 'dov']) {
    await desk.put(mark(subject));
    await desk.pump.run();
  }
  await desk.put(mark('cleo'));
  const close = async () => {
    await outbound.close();
    await school.close();
  };
  return { desk, mark, gradebook, clock, close };
}

describe('npm run -s deliveries', () => {
  it('lists what has not arrived, with its reason, and lets one decide', async () => {
    const { desk, mark, gradebook, clock, close } = await scene();
    const listed = await deliveries();
    const rows = JSON.parse(listed.out) as { delivery: string; subject: string }[];
    expect(rows).toMatchObject([
      { subject: 'ada', state: 'held', reason: 'changedOnPlatform', nextTryAt: null },
      { subject: 'bo', state: 'stuck', reason: 'notGradable', because: expect.any(String) },
      { subject: 'cleo', state: 'waiting', reason: null, because: null, tries: 0 },
    ]);
    const [held, stuck] = rows.map(({ delivery }) => delivery);

    expect((await deliveries('release', held ?? '')).code).toBe(0);
    gradebook.strangers.clear();
    expect((await deliveries('retry', stuck ?? '')).code).toBe(0);
    clock.now = Date.now() + 60_000;
    await desk.pump.run();
    for (const subject of ['ada', 'bo', 'cleo'])
      expect(await desk.row(mark(subject))).toMatchObject({ state: 'sent' });
    expect(JSON.parse((await deliveries()).out)).toEqual([]);
    await close();
  });

  it.each([
    [['retry', 'nothing-of-ours'], 'no delivery nothing-of-ours'],
    [['release', 'nothing-of-ours'], 'no delivery nothing-of-ours'],
    [['retry'], 'Usage'],
    [['toString'], 'Usage'],
  ])('says what is wrong with "%s"', async (words, complaint) => {
    const { code, out, err } = await deliveries(...words);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toContain(complaint);
  });
});
