import { readFileSync, statSync } from 'node:fs';
import type { Stage } from '../../engine/index.ts';

interface Chunk {
  readonly file: string;
  readonly css?: readonly string[];
  readonly imports?: readonly string[];
}

const DIST = new URL('../../client/dist/', import.meta.url);
const read = (file: string) => readFileSync(new URL(file, DIST));

/** What the build made of each source file, by its path in the client. */
export const builtChunks = (): Record<string, Chunk> =>
  JSON.parse(read('.vite/manifest.json').toString()) as Record<string, Chunk>;

/** A built source file and everything that it needs at once. */
export const filesOf = (name: string): Set<string> => {
  const chunks = builtChunks();
  const seen = new Set<string>();
  const add = (one: string) => {
    const chunk = chunks[one];
    if (chunk === undefined || seen.has(chunk.file)) return;
    for (const file of [chunk.file, ...(chunk.css ?? [])]) seen.add(file);
    for (const other of chunk.imports ?? []) add(other);
  };
  add(name);
  return seen;
};

/** The longest of the languages. */
const LANGUAGE = 'words/es.ts';

/** Everything that is fetched until a child can work at a stage. */
export const pageAt = (stage: Stage): Set<string> => {
  const one = stage === 'bars1' ? 'bars' : stage;
  const entries = ['index.html', LANGUAGE, 'work/start.ts', `work/stages/${one}.ts`];
  return new Set([...entries, `../engine/stages/${one}.ts`].flatMap((name) => [...filesOf(name)]));
};

/** Bytes of built files, each as the server sends it to a browser over https (brotli, which none asks for without). */
export const compressedBytes = (files: Iterable<string>): number =>
  [...files].reduce((sum, file) => sum + statSync(new URL(`${file}.br`, DIST)).size, 0);
