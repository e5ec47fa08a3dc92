import { type ChildProcess, spawn } from 'node:child_process';
import { mkdir, readdir, stat } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const PATIENCE_MS = 5_000;
/** Less than this in that time is no download: locks and notes are small. */
const LEAST_BYTES = 65_536;
const script = fileURLToPath(new URL('./fetch-mongod.ts', import.meta.url));
const loader = pathToFileURL(createRequire(import.meta.url).resolve('tsx')).href;

/** The mongod that mongodb-memory-server downloads; given up once nothing has come in for five seconds. */
export async function fetchedMongod(cache: string): Promise<string | null> {
  const folder = join(cache, 'fetched');
  await mkdir(folder, { recursive: true });
  const child = spawn(process.execPath, ['--import', loader, script, folder], {
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  const watch = endWhenStill(child, folder);
  try {
    return pathIn(await textOf(child));
  } finally {
    clearInterval(watch);
  }
}

function endWhenStill(child: ChildProcess, folder: string) {
  let seen = 0;
  return setInterval(async () => {
    const size = await sizeOf(folder);
    if (size - seen < LEAST_BYTES) child.kill('SIGKILL');
    seen = size;
  }, PATIENCE_MS);
}

async function sizeOf(folder: string): Promise<number> {
  const names = await readdir(folder).catch(() => []);
  const sizes = names.map((name) => stat(join(folder, name)).then((file) => file.size));
  const known = await Promise.all(sizes.map((size) => size.catch(() => 0)));
  return known.reduce((sum, size) => sum + size, 0);
}

function textOf(child: ChildProcess): Promise<string> {
  return new Promise((settle) => {
    let text = '';
    child.stdout?.on('data', (chunk) => {
      text += chunk;
    });
    child.on('error', () => settle(''));
    child.on('close', (code) => settle(code === 0 ? text : ''));
  });
}

function pathIn(text: string): string | null {
  const line = text.trimEnd().split('\n').at(-1) ?? '';
  return line.startsWith('{') ? (JSON.parse(line) as { path: string }).path : null;
}
