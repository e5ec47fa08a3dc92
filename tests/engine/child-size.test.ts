import { relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build, type Rolldown } from 'vite';
import { describe, expect, it } from 'vitest';

const ENGINE = fileURLToPath(new URL('../../engine/', import.meta.url));

/** The small door with all that it leads to, minified as for the page; nothing is written to disk. */
async function bundled(): Promise<readonly Rolldown.OutputChunk[]> {
  const made = (await build({
    configFile: false,
    logLevel: 'silent',
    build: {
      write: false,
      minify: true,
      lib: { entry: `${ENGINE}child.ts`, formats: ['es'], fileName: 'child' },
    },
  })) as Rolldown.RolldownOutput[];
  return made.flatMap(({ output }) => output.filter((each) => each.type === 'chunk'));
}

const chunks = await bundled();
const files = chunks.flatMap(({ moduleIds }) => moduleIds.map((id) => relative(ENGINE, id)));

describe("the engine of a child's page", () => {
  it('is at most 20 kB compressed before a stage is fetched', () => {
    const entry = chunks.find(({ isEntry }) => isEntry)!;
    const first = chunks.filter((each) => each === entry || entry.imports.includes(each.fileName));
    expect(bytesOf(first)).toBeLessThanOrEqual(20_000);
  });

  it('holds nothing that belongs to the teacher, the measuring or the command line', () => {
    expect(files.length).toBeGreaterThan(40);
    const foreign = /^(patterns|pupils|problems|mastery|cli)\/|^\.\./;
    expect(files.filter((file) => foreign.test(file))).toEqual([]);
  });
});

function bytesOf(some: readonly Rolldown.OutputChunk[]): number {
  return some.reduce((sum, { code }) => sum + gzipSync(code).length, 0);
}
