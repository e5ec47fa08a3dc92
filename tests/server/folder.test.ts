import { mkdir, mkdtemp, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { keptSecret } from '../../server/database/folder.ts';

let folder = '';
const file = () => join(folder, 'secret');

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'kept-'));
});
afterEach(() => rm(folder, { recursive: true }));

test('a secret is made once, is the same ever after, and is for nobody else to read', async () => {
  const made = await keptSecret(file());
  expect(made).toMatch(/^[0-9a-f]{64}$/);
  expect(await keptSecret(file())).toBe(made);
  expect((await stat(file())).mode & 0o777).toBe(0o600);
});

test('a line end that an editor added changes nothing', async () => {
  const made = await keptSecret(file());
  await writeFile(file(), `${made}\n`);
  expect(await keptSecret(file())).toBe(made);
});

test.each(['', 'half a secr'])('a damaged one (%j) is never replaced', async (text) => {
  await writeFile(file(), text);
  await expect(keptSecret(file())).rejects.toThrow('damaged');
  expect(await readFile(file(), 'utf8')).toBe(text);
});

test('one that cannot be read is never replaced', async () => {
  await mkdir(file());
  await expect(keptSecret(file())).rejects.toThrow();
});
