import { execFile } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { describe, expect, onTestFinished, test } from 'vitest';
import { readActivity } from '../../server/activities/file.ts';
import { activityStore } from '../../server/activities/store.ts';
import { openDatabase } from '../../server/database/open.ts';
import { createLog } from '../../server/log.ts';
import { platformStore } from '../../server/platforms/store.ts';
import { freshUri } from '../support/database.ts';
import { ONE_ROW } from './page.ts';

const FILE = { registration: 'harbour-lane', title: 'One row', problems: [ONE_ROW] };

describe('the file of an activity', () => {
  test('is released on finish, for 100 points, unless it says otherwise', () => {
    expect(readActivity(FILE)).toMatchObject({ value: { release: 'onFinish', points: '100' } });
    const own = { ...FILE, release: 'byTeacher', points: '7.5' };
    expect(readActivity(own)).toMatchObject({ value: { release: 'byTeacher', points: '7.5' } });
  });

  test.each<[string, unknown, RegExp]>([
    ['without a title', { ...FILE, title: ' ' }, /^title: /],
    ['without problems', { ...FILE, problems: [] }, /^problems: /],
    ['for no points', { ...FILE, points: '0' }, /^points: /],
    ['without a registration', { title: 'T', problems: [ONE_ROW] }, /^registration: is missing$/],
    ['with a word misspelt', { ...FILE, point: '5' }, /^point: is not known here$/],
    ['that is no object', 'activity', /^the file: /],
  ])('%s is refused', (_how, written, complaint) => {
    const read = readActivity(written);
    expect(read.ok || read.complaints[0]).toMatch(complaint);
  });

  test('gives its policy to each problem that does not say otherwise', () => {
    const own = { ...ONE_ROW, policy: { control: 'end' } };
    const policy = { presentation: true, control: 'silent' };
    const read = readActivity({ ...FILE, policy, problems: [ONE_ROW, own] });
    expect(read).toMatchObject({
      value: {
        problems: [
          { policy: { presentation: true, control: 'silent' } },
          { policy: { presentation: true, control: 'end' } },
        ],
      },
    });
  });

  test('with a policy that nobody knows names the word', () => {
    const read = readActivity({ ...FILE, policy: { presentation: 'often' } });
    expect(read.ok || read.complaints[0]).toMatch(/notYesOrNo.*policy\.presentation/);
    const strange = readActivity({ ...FILE, policy: { shows: true } });
    expect(strange.ok || strange.complaints[0]).toMatch(/unknownField.*policy\.shows/);
  });

  test('with a problem that fits no mat names it and the size it needs', () => {
    const large = { stage: 'bars', multiplicand: '12345678901', multiplier: '123' };
    const read = readActivity({ ...FILE, problems: [ONE_ROW, large] });
    expect(read.ok || read.complaints).toEqual([
      expect.stringMatching(/^problems\[1\]: .*doesNotFit/),
    ]);
  });
});

describe('the command that keeps an activity', () => {
  const run = promisify(execFile);
  const script = fileURLToPath(new URL('../../server/cli/activity.ts', import.meta.url));

  const named = (file: string, uri: string) =>
    run(process.execPath, ['--import', 'tsx', script, file], {
      env: { ...process.env, PLACEWEAVE_MONGODB_URI: uri },
    });

  async function keep(text: string, uri: string) {
    const folder = await mkdtemp(join(tmpdir(), 'placeweave-activity-'));
    onTestFinished(() => rm(folder, { recursive: true, force: true }));
    const file = join(folder, 'activity.json');
    await writeFile(file, text);
    return named(file, uri);
  }

  test('prints its id, under which it is found', async () => {
    const uri = freshUri();
    const opened = await openDatabase(
      { mongodbUri: uri, dataFolder: '', freeMegabytes: 0 },
      createLog('silent'),
    );
    if (!opened.ok) throw new Error(opened.fault.text);
    const { connection, close } = opened.value;
    const client = { issuer: 'https://learn.example', clientId: 'client-1' };
    await platformStore(connection).save(client, {});
    const registration = (await platformStore(connection).list())[0]?.id ?? '';
    const { stdout } = await keep(JSON.stringify({ ...FILE, registration }), uri);
    const kept = await activityStore(connection).newest(JSON.parse(stdout).activity, registration);
    await connection.dropDatabase();
    await close();
    expect(kept).toMatchObject({ version: 1, title: 'One row', problems: [ONE_ROW] });
  });

  test.each<[string, string, RegExp]>([
    ['what is wrong in it', JSON.stringify({ ...FILE, problems: 'none' }), /^problems: /],
    ['that it is not JSON', '{ "title": }', /activity\.json is not JSON: /],
    ['that the platform is not registered', JSON.stringify(FILE), /^There is no registration harb/],
  ])('says of its file %s and fails', async (_what, text, complaint) => {
    await expect(keep(text, freshUri())).rejects.toMatchObject({
      code: 1,
      stderr: expect.stringMatching(complaint),
    });
  });

  test.each([
    ['no-such.json', /^no-such\.json cannot be read \(ENOENT\)/],
    ['--help', /^Usage: /],
  ])('given %s says so and fails', async (file, complaint) => {
    await expect(named(file, freshUri())).rejects.toMatchObject({
      code: 1,
      stderr: expect.stringMatching(complaint),
    });
  });
});
