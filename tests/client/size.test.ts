import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { expect, it } from 'vitest';

interface Chunk {
  readonly file: string;
  readonly css?: readonly string[];
  readonly imports?: readonly string[];
}

const DIST = new URL('../../client/dist/', import.meta.url);
const read = (file: string) => readFileSync(new URL(file, DIST));
const manifest = JSON.parse(read('.vite/manifest.json').toString()) as Record<string, Chunk>;

const filesOf = (name: string, seen = new Set<string>()): Set<string> => {
  const chunk = manifest[name];
  if (chunk === undefined || seen.has(chunk.file)) return seen;
  for (const file of [chunk.file, ...(chunk.css ?? [])]) seen.add(file);
  for (const other of chunk.imports ?? []) filesOf(other, seen);
  return seen;
};

it("a child's page needs at most 70 kB of compressed scripts and styles", () => {
  const files = new Set([...filesOf('index.html'), ...filesOf('work/start.ts')]);
  expect(files.size).toBeGreaterThan(2);
  const bytes = [...files].reduce((sum, file) => sum + gzipSync(read(file)).length, 0);
  expect(bytes).toBeLessThanOrEqual(70_000);
});

it("holds nothing of the teacher's table", () => {
  const files = [...filesOf('index.html'), ...filesOf('work/start.ts')];
  expect(files).not.toContain(manifest['teach/class.ts']?.file);
});
