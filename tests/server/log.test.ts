import { Writable } from 'node:stream';
import express from 'express';
import { expect, test } from 'vitest';
import { createLog } from '../../server/log.ts';
import { logRequests } from '../../server/steps.ts';

function logged(write: (log: ReturnType<typeof createLog>) => void): string {
  let text = '';
  const sink = new Writable({
    write(chunk, _encoding, next) {
      text += chunk;
      next();
    },
  });
  write(createLog('info', sink));
  return text;
}

test.each(['token', 'authorization', 'id_token', 'subject', 'name', 'email', 'actions', 'ip'])(
  'no line shows a %s, however deep',
  (key) => {
    const text = logged((log) =>
      log.info({ [key]: 'hush', a: { [key]: 'hush', b: { [key]: 'hush' } } }),
    );
    expect(text).toContain('[cut]');
    expect(text).not.toContain('hush');
  },
);

test('an error shows where it came from, not what somebody sent', () => {
  const text = logged((log) => log.error({ err: new TypeError('no such child: hush') }, 'failed'));
  expect(JSON.parse(text).err).toMatchObject({ kind: 'TypeError' });
  expect(text).toContain('log.test.ts');
  expect(text).not.toContain('hush');
});

test('a request is one short line, however long its address, and its query is not in it', async () => {
  const lines: string[] = [];
  const log = createLog('info', { write: (line) => lines.push(line) });
  const server = express().use(logRequests(log)).listen(0, '127.0.0.1');
  await new Promise((done) => server.once('listening', done));
  const { port } = server.address() as { port: number };
  await fetch(`http://127.0.0.1:${port}/${'made-up'.repeat(1_000)}?login_hint=hush`);
  await new Promise((done) => server.close(done));
  expect(lines).toHaveLength(1);
  expect(lines[0]).toContain('/made-up');
  expect(lines[0]).not.toContain('hush');
  expect(lines[0]?.length).toBeLessThan(400);
});
