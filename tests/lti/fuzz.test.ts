import { connect } from 'node:net';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { databaseForFile } from '../support/database.ts';
import { openPlatform, type TestPlatform } from '../support/platform.ts';
import { arrive, initiation, openTool, type Tool } from './support/tool.ts';

const database = databaseForFile();
let tool: Tool;
let platform: TestPlatform;
const rejections: unknown[] = [];
const note = (reason: unknown) => rejections.push(reason);

beforeAll(async () => {
  process.on('unhandledRejection', note);
  platform = await openPlatform();
  tool = await openTool(database().connection);
  await tool.register(platform);
});
afterAll(async () => {
  process.off('unhandledRejection', note);
  await tool.close();
  await platform.close();
});

/** Each from an address of its own, so that all of them are looked at and none is merely counted. */
let sender = 0;
const from = () => {
  sender += 1;
  return `10.${(sender >> 16) & 255}.${(sender >> 8) & 255}.${sender & 255}`;
};

async function send(method: string, path: string, type: string, body?: string | Uint8Array) {
  const headers = { 'content-type': type, 'x-forwarded-for': from() };
  const init =
    body === undefined
      ? { method, headers }
      : { method, headers, body: body as RequestInit['body'] & {} };
  const response = await tool.fetch(path, init);
  await response.text();
  return response.status;
}

/** The server answered, as a client error, and no promise was left rejected. */
async function expectRefused(status: number) {
  expect(status).toBeGreaterThanOrEqual(400);
  expect(status).toBeLessThan(500);
  await new Promise((done) => setImmediate(done));
  expect(rejections).toEqual([]);
}

const FORM = 'application/x-www-form-urlencoded';

test.each([
  ['a letter that no cookie name may have', FORM, 'state=a+b'],
  ['a semicolon', FORM, 'state=a%3Bb'],
  ['a line break', FORM, 'state=a%0d%0ab'],
  ['an array', FORM, 'state[]=a&state[]=b'],
  ['an object', FORM, 'state[$ne]=x'],
  ['a repeated field', FORM, 'state=a&state=b'],
  ['nothing', FORM, 'state='],
  ['a state of the right length in capitals', FORM, `state=${'A'.repeat(50)}`],
  ['a JSON object', 'application/json', '{"state":{"a":1}}'],
  ['a JSON object with a token', 'application/json', '{"state":{},"id_token":{"a":1}}'],
  ['text', 'text/plain', 'state=a b'],
  ['bytes', 'application/octet-stream', 'state=a b'],
])('a state that is %s', async (_name, type, body) => {
  for (const suffix of ['', type === FORM ? '&id_token=a.b.c' : ''])
    for (const path of ['/lti/launch', '/lti/login', '/lti/launch/confirm'])
      await expectRefused(await send('POST', path, type, body + suffix));
});

const name = fc.constantFrom(
  ...['state', 'id_token', 'error', 'iss', 'login_hint', 'target_link_uri', 'client_id', 'ltik'],
  ...['state[]', 'state[a]', 'iss[$ne]', '__proto__', 'constructor', 'toString'],
);
const value = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc.constantFrom(
    'a'.repeat(50),
    'https://moodle.example',
    'clientid0000001',
    'a.b.c',
    '%',
    '\r\n',
  ),
);
const fields = fc.array(fc.tuple(name, value), { maxLength: 8 });
const path = fc.constantFrom(
  '/lti/login',
  '/lti/launch',
  '/lti/launch/confirm',
  '/lti/keys',
  '/lti/x',
);

test('any form, sent to any address, ends in a refusal or a login and nothing else', async () => {
  await fc.assert(
    fc.asyncProperty(path, fields, async (where, pairs) => {
      const body = pairs.map((pair) => pair.map(encodeURIComponent).join('=')).join('&');
      const status = await send('POST', where, FORM, body);
      expect(status).toBeLessThan(500);
      expect(await send('GET', `${where}?${body}`, FORM)).toBeLessThan(500);
    }),
    { numRuns: 150 },
  );
  expect(rejections).toEqual([]);
  expect(tool.admitted).toEqual([]);
});

test('any JSON and any bytes, of any announced type, end in a refusal', async () => {
  const type = fc.constantFrom('application/json', FORM, 'text/plain', 'multipart/form-data', '');
  const body = fc.oneof(
    fc.json().map((text) => new TextEncoder().encode(text)),
    fc.uint8Array({ maxLength: 200 }),
  );
  await fc.assert(
    fc.asyncProperty(path, type, body, async (where, announced, bytes) => {
      const status = await send('POST', where, announced, bytes as Uint8Array<ArrayBuffer>);
      await expectRefused(status);
    }),
    { numRuns: 150 },
  );
});

test('an address that cannot be decoded, a broken encoding, an unknown charset', async () => {
  await expectRefused(await send('POST', '/lti/launch?%', FORM, 'state=%'));
  await expectRefused(await send('POST', '/lti/%E0%A4%A', FORM, ''));
  await expectRefused(await send('POST', '/lti/launch', `${FORM}; charset=none`, 'a=b'));
  const headers = { 'content-type': FORM, 'content-encoding': 'gzip', 'x-forwarded-for': from() };
  const response = await tool.fetch('/lti/launch', { method: 'POST', headers, body: 'not gzip' });
  await expectRefused(response.status);
});

test('a request line with a whole address that is none', async () => {
  const { port, hostname } = new URL((await tool.fetch('/lti/keys')).url);
  const socket = connect(Number(port), hostname).setEncoding('utf8');
  let answer = '';
  socket.on('data', (text) => {
    answer += text;
  });
  socket.write(
    'GET http://x:99999/lti/login?iss=a HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n',
  );
  await new Promise((done) => socket.once('close', done));
  await expectRefused(Number(answer.split(' ')[1]));
});

test('a sender that goes away in the middle of its form', async () => {
  const { port, hostname } = new URL((await tool.fetch('/lti/keys')).url);
  const socket = connect(Number(port), hostname);
  await new Promise((done) => socket.once('connect', done));
  socket.write(
    `POST /lti/launch HTTP/1.1\r\nHost: x\r\nContent-Type: ${FORM}\r\nContent-Length: 90\r\n\r\nst`,
  );
  socket.destroy();
  await new Promise((done) => socket.once('close', done));
  expect((await tool.fetch('/lti/keys')).status).toBe(200);
  expect(rejections).toEqual([]);
});

test('a database that is gone: a page, and the process stays', async () => {
  const spare = await openTool(database().connection.useDb('spare'));
  const closed = Object.assign(new Error('away'), { name: 'MongoNetworkError' });
  spare.platforms.byIssuer = () => Promise.reject(closed);
  const response = await spare.fetch('/lti/login', {
    method: 'POST',
    body: new URLSearchParams(initiation(platform)),
  });
  expect(response.status).toBe(500);
  expect(await response.text()).toContain('<code>broken</code>');
  await spare.close();
  expect(rejections).toEqual([]);
});

test('after all of that a good launch still lands', async () => {
  const { page } = await arrive(tool, platform);
  expect(page.boot?.code).toMatch(/^[0-9a-f]{64}$/);
});
