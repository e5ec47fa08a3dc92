import { Writable } from 'node:stream';
import { expect, test } from 'vitest';
import { createLog } from '../../server/log.ts';

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
