import { setTimeout as sleep } from 'node:timers/promises';
import type { Log } from '../log.ts';
import { findMongod } from './binary.ts';
import {
  diskFull,
  type Found,
  folderInUse,
  folderNotWritable,
  mongodFailed,
  otherVersion,
} from './faults.ts';
import { type DataFolder, openFolder, readTenant, writeTenant } from './folder.ts';
import { localUri, makeReady } from './replica.ts';
import { freeMegabytes } from './room.ts';
import { EXIT, freePort, type Running, spawnMongod } from './spawn.ts';

/** The database that comes along: a mongod of our own on the data folder. */
export interface Embedded {
  readonly uri: string;
  stop(): Promise<void>;
}

interface Settings {
  readonly dataFolder: string;
  readonly freeMegabytes: number;
}

export async function startEmbedded(settings: Settings, log: Log): Promise<Found<Embedded>> {
  const folder = await openFolder(settings.dataFolder);
  if (folder === null) return folderNotWritable(settings.dataFolder);
  const free = await freeMegabytes(folder.root);
  if (free < settings.freeMegabytes) return diskFull(folder.root, free, settings.freeMegabytes);
  const binary = await findMongod(log);
  if (!binary.ok) return binary;
  const started = await start(binary.value, folder, log);
  return started.ok
    ? { ok: true, value: keepUp(binary.value, folder, started.value, log) }
    : started;
}

/** The address of the database that a running Placeweave has on this folder, or `null`: for a command beside it. */
export async function runningOn(dataFolder: string): Promise<string | null> {
  const tenant = await readTenant(dataFolder);
  if (tenant === null || !lives(tenant.owner)) return null;
  const folder = await openFolder(dataFolder);
  return folder && localUri(tenant.port, folder.key);
}

interface Member {
  readonly running: Running;
  readonly port: number;
}

const TAKEN_PATIENCE_MS = 12_000;

/** Starts on the folder; waits while the mongod of a Placeweave that was killed shuts down. */
async function start(binary: string, folder: DataFolder, log: Log): Promise<Found<Member>> {
  const until = Date.now() + TAKEN_PATIENCE_MS;
  for (;;) {
    const tenant = await readTenant(folder.root);
    const started = await startOnce(binary, folder, await freePort(tenant?.port ?? 0));
    if (typeof started !== 'number') return { ok: true, value: started };
    if (started === EXIT.portTaken) continue;
    if (started !== EXIT.dataFolderTaken) return explain(started, binary, folder);
    const owner = tenant?.owner ?? null;
    if (owner === null || lives(owner)) return folderInUse(folder.root, owner);
    if (Date.now() > until) return folderInUse(folder.root, null);
    log.info('waiting for the database of a Placeweave that was ended to shut down');
    await sleep(150);
  }
}

/** A running, writable member, or the exit code of the mongod that did not become one. */
async function startOnce(
  binary: string,
  folder: DataFolder,
  port: number,
): Promise<Member | number> {
  const running = spawnMongod(binary, folder, port);
  let code: number | null | undefined;
  running.ended.then((ended) => {
    code = ended;
  });
  const ready = await makeReady(port, folder.key, () => code !== undefined);
  if (ready) {
    await writeTenant(folder.root, { owner: process.pid, mongod: running.pid, port });
    return { running, port };
  }
  if (code === undefined) await running.stop();
  return code ?? -1;
}

function explain(code: number, binary: string, folder: DataFolder) {
  if (code === EXIT.otherVersion) return otherVersion(folder.root, binary);
  return mongodFailed(folder.logFile, code === -1 ? 'it did not answer in time' : `exit ${code}`);
}

/** A process id may have been given to this very process since (in a container it usually is). */
function lives(pid: number): boolean {
  if (pid === process.pid) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (fault) {
    return (fault as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** A mongod that ends by itself (a full disk makes it) is started again on the same port until it stays. */
function keepUp(binary: string, folder: DataFolder, first: Member, log: Log): Embedded {
  let member = first;
  let stopping = false;
  const watch = async () => {
    while (!stopping) {
      await member.running.ended;
      if (stopping) return;
      log.error({ logFile: folder.logFile }, 'the database ended by itself; starting it again');
      member = await revive(binary, folder, member, () => stopping);
    }
  };
  const watching = watch();
  const stop = async () => {
    stopping = true;
    await member.running.stop();
    await watching;
    await member.running.stop();
  };
  return { uri: localUri(first.port, folder.key), stop };
}

async function revive(binary: string, folder: DataFolder, last: Member, stopping: () => boolean) {
  for (let wait = 500; !stopping(); wait = Math.min(wait * 2, 15_000)) {
    const started = await startOnce(binary, folder, last.port);
    if (typeof started !== 'number') return started;
    await sleep(wait);
  }
  return last;
}
