import { describe, expect, test } from 'vitest';
import { LIMITS } from '../../server/contract.ts';
import { databaseForFile } from '../support/database.ts';
import { appForFile, call } from '../support/server.ts';
import { attemptOf, movesOf, numbered, ONE_ROW } from './page.ts';

const database = databaseForFile();
const app = appForFile(database);

async function begun() {
  const activity = await app().activity([ONE_ROW]);
  const token = await app().token({ custom: { activity } });
  const { id } = await attemptOf(app(), token);
  return { token, id, path: `/api/attempts/${id}/actions` };
}

const good = numbered([movesOf(ONE_ROW)[0]])[0]!;

const BAD: Record<string, [message: unknown, status: number, code: string, at?: string]> = {
  'no object': [[], 400, 'badMessage'],
  null: ['null', 400, 'notJson'],
  'no JSON': ['{"base": 0, ', 400, 'notJson'],
  'no base': [{ actions: [good] }, 400, 'badMessage', 'base'],
  'a negative base': [{ base: -1, actions: [good] }, 400, 'badMessage', 'base'],
  'a base in words': [{ base: '0', actions: [good] }, 400, 'badMessage', 'base'],
  'no list of actions': [{ base: 0, actions: good }, 400, 'badMessage', 'actions'],
  'an action that is no object': [{ base: 0, actions: [7] }, 400, 'badMessage', 'actions[0]'],
  'a field too many': [
    { base: 0, actions: [{ ...good, verdict: 'right' }] },
    400,
    'badMessage',
    'actions[0].verdict',
  ],
  'a broken number': [
    { base: 0, actions: [{ ...good, n: 0.5 }] },
    400,
    'badMessage',
    'actions[0].n',
  ],
  'a client that is no id': [
    { base: 0, actions: [{ ...good, client: '$where' }] },
    400,
    'badMessage',
    'actions[0].client',
  ],
  'a client named like a property of objects': [
    { base: 0, actions: [{ ...good, client: '__proto__' }] },
    400,
    'badMessage',
    'actions[0].client',
  ],
  'an unknown action': [
    { base: 0, actions: [{ ...good, action: { do: 'cheat' } }] },
    400,
    'badMessage',
    'actions[0].action.do',
  ],
  'an action with a digit in words': [
    {
      base: 0,
      actions: [{ ...good, action: { do: 'layTile', edge: 'bottom', index: 0, digit: '4' } }],
    },
    400,
    'badMessage',
    'actions[0].action.digit',
  ],
  'a problem that is not there': [
    { base: 0, actions: [{ ...good, problem: 1 }] },
    400,
    'noSuchProblem',
    'actions[0].problem',
  ],
  'a gap in front': [{ base: 0, actions: [{ ...good, n: 1 }] }, 400, 'outOfOrder', 'actions[0].n'],
  'a gap inside': [
    { base: 0, actions: [good, { ...good, n: 2 }] },
    400,
    'outOfOrder',
    'actions[1].n',
  ],
  'the wrong way round': [
    { base: 0, actions: [{ ...good, n: 1 }, good] },
    400,
    'outOfOrder',
    'actions[0].n',
  ],
  'the same action twice': [{ base: 0, actions: [good, good] }, 400, 'outOfOrder', 'actions[1].n'],
  'one action too many': [
    { base: 0, actions: numbered(Array(LIMITS.actionsPerBatch + 1).fill({ do: 'check' })) },
    413,
    'tooManyActions',
    'actions',
  ],
  'too many bytes': [
    { base: 0, actions: [{ ...good, action: { do: 'check', note: 'x'.repeat(65 * 1024) } }] },
    413,
    'bodyTooLarge',
  ],
  '10,000 actions': [
    { base: 0, actions: numbered(Array(10_000).fill({ do: 'check' })) },
    413,
    'bodyTooLarge',
  ],
  '10 MB': ['x'.repeat(10 * 2 ** 20), 413, 'bodyTooLarge'],
};

describe('a batch is refused, and nothing of it is kept, with', () => {
  test.each(Object.entries(BAD))('%s', async (_name, [message, status, code, at]) => {
    const { token, path } = await begun();
    const answer = await app().post(token, path, message);
    expect(answer.status).toBe(status);
    expect(answer.body.error.code).toBe(code);
    expect(answer.body.error.text).toMatch(/\.$/);
    if (at !== undefined) expect(answer.body.error.at).toBe(at);
    expect((await attemptOf(app(), token)).length).toBe(0);
  });

  test('another type than JSON', async () => {
    const { token, path } = await begun();
    const body = JSON.stringify({ base: 0, actions: [good] });
    const answer = await call(app().url + path, token, body, { 'content-type': 'text/plain' });
    expect(answer).toMatchObject({ status: 400, body: { error: { code: 'notJson' } } });
    expect((await attemptOf(app(), token)).length).toBe(0);
  });
});

test('as many actions as are allowed at once are kept', async () => {
  const { token, path } = await begun();
  const actions = numbered(Array(LIMITS.actionsPerBatch).fill({ do: 'check' }), {
    client: 'page-0001',
  });
  const answer = await app().post(token, path, { base: 0, actions });
  expect(answer).toMatchObject({ status: 200, body: { length: LIMITS.actionsPerBatch } });
});

describe("another person's attempt", () => {
  test('takes no actions and shows nothing', async () => {
    const mine = await begun();
    const theirs = await begun();
    const message = { base: 0, actions: [good] };
    for (const answer of [
      await app().post(mine.token, theirs.path, message),
      await app().get(mine.token, `/api/attempts/${theirs.id}/result`),
      await app().post(mine.token, '/api/attempts/nothing/actions', message),
    ]) {
      expect(answer).toMatchObject({ status: 404, body: { error: { code: 'notFound' } } });
    }
    expect((await attemptOf(app(), theirs.token)).length).toBe(0);
  });

  test('takes nothing without a session either', async () => {
    const { path, token } = await begun();
    const answer = await app().post(null, path, { base: 0, actions: [good] });
    expect(answer).toMatchObject({ status: 401, body: { error: { code: 'noSession' } } });
    expect((await attemptOf(app(), token)).length).toBe(0);
  });
});

test('a full disk is answered with a code, and nothing is acknowledged', async () => {
  const { token, path } = await begun();
  app().disk.room = false;
  const answer = await app().post(token, path, { base: 0, actions: [good] });
  const ready = await app().get(null, '/health/ready');
  app().disk.room = true;
  expect(answer).toMatchObject({ status: 503, body: { error: { code: 'diskFull' } } });
  expect(answer.body).not.toHaveProperty('acknowledged');
  expect(ready.status).toBe(503);
  expect((await attemptOf(app(), token)).length).toBe(0);
  expect(await app().post(token, path, { base: 0, actions: [good] })).toMatchObject({
    status: 200,
  });
});
