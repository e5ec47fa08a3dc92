import { randomBytes } from 'node:crypto';
import { access, chmod, constants, mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';

/** What the data folder holds. Everything in it is for this user's eyes only: it is children's work. */
export interface DataFolder {
  readonly root: string;
  readonly database: string;
  readonly logFile: string;
  readonly keyFile: string;
  /** Shared by the members of the replica set and by the one user of the database. */
  readonly key: string;
}

/** `null` when the folder cannot be made or written. */
export async function openFolder(root: string): Promise<DataFolder | null> {
  const database = join(root, 'db');
  try {
    await mkdir(database, { recursive: true });
    await chmod(root, 0o700);
    await access(root, constants.W_OK);
    const keyFile = join(root, 'mongod.key');
    const key = await keptSecret(keyFile);
    return { root, database, logFile: join(root, 'mongod.log'), keyFile, key };
  } catch {
    return null;
  }
}

/**
 * A secret made once and kept in a file. Hexadecimal, which a MongoDB key file and an address both take as it is.
 * @throws if the file is there and cannot be read or holds something else: a new one would open nothing that is kept
 */
export async function keptSecret(file: string): Promise<string> {
  const kept = await readFile(file, 'utf8').catch(absent);
  if (kept !== null) return wholeSecret(kept, file);
  const secret = randomBytes(32).toString('hex');
  await replaceFile(file, secret);
  return secret;
}

function absent(fault: NodeJS.ErrnoException): null {
  if (fault.code === 'ENOENT') return null;
  throw fault;
}

/** An editor may have ended the line. */
function wholeSecret(kept: string, file: string): string {
  const secret = kept.trim();
  if (/^[0-9a-f]{64}$/.test(secret)) return secret;
  throw new Error(`${file} is damaged; bring it back from a backup`);
}

/** Who runs the database of this folder; read only when mongod says that the folder is taken. */
export interface Tenant {
  readonly owner: number;
  readonly mongod: number;
  readonly port: number;
}

export async function readTenant(root: string): Promise<Tenant | null> {
  const text = await readFile(join(root, 'mongod.json'), 'utf8').catch(() => '');
  return tenantIn(text);
}

function tenantIn(text: string): Tenant | null {
  try {
    const { owner, mongod, port } = JSON.parse(text) as Record<string, unknown>;
    const known = [owner, mongod, port].every(Number.isInteger);
    return known ? ({ owner, mongod, port } as Tenant) : null;
  } catch {
    return null;
  }
}

export async function writeTenant(root: string, tenant: Tenant): Promise<void> {
  await replaceFile(join(root, 'mongod.json'), JSON.stringify(tenant));
}

/** Appears whole or not at all, also when the process ends in the middle. */
async function replaceFile(file: string, text: string): Promise<void> {
  const draft = `${file}.${process.pid}`;
  await mkdir(dirname(file), { recursive: true });
  await writeFile(draft, text, { mode: 0o600 });
  await rename(draft, file);
}
