import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { STAGES, type Stage } from '../../engine/index.ts';

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

/** The longest of the languages. */
const LANGUAGE = 'words/es.ts';

/** Everything that is fetched until a child can work at a stage. */
const pageAt = (stage: Stage): Set<string> => {
  const one = stage === 'bars1' ? 'bars' : stage;
  const entries = ['index.html', LANGUAGE, 'work/start.ts', `work/stages/${one}.ts`];
  return new Set([...entries, `../engine/stages/${one}.ts`].flatMap((name) => [...filesOf(name)]));
};

const bytesOf = (files: Iterable<string>): number =>
  [...files].reduce((sum, file) => sum + gzipSync(read(file)).length, 0);

describe.each([...STAGES])("a child's page at the stage %s", (stage) => {
  it('needs at most 70 kB of compressed scripts and styles', () => {
    const files = pageAt(stage);
    expect(files.size).toBeGreaterThan(6);
    expect(bytesOf(files)).toBeLessThanOrEqual(70_000);
  });

  it("holds nothing of the teacher's table", () => {
    expect([...pageAt(stage)]).not.toContain(manifest['teach/class.ts']?.file);
  });
});

it.each([
  ['work/hints.ts', 3_000],
  ['work/keys-list.ts', 3_000],
  ['work/result.ts', 3_000],
  ['mat/open-square.ts', 5_000],
])('what is fetched when it is asked for is small: %s', (name, most) => {
  const more = [...filesOf(name)].filter((file) => !pageAt('walk').has(file));
  expect(more.length).toBeGreaterThan(0);
  expect(bytesOf(more)).toBeLessThanOrEqual(most);
});
