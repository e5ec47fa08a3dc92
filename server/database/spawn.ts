import { type ChildProcess, spawn } from 'node:child_process';
import { createServer } from 'node:net';
import type { DataFolder } from './folder.ts';

/** The replica set has one member; it exists because transactions and change streams need one. */
export const REPLICA_SET = 'placeweave';

/** MongoDB's own exit codes (mongod manual, "Exit Codes and Statuses"). */
export const EXIT = { dataFolderTaken: 100, otherVersion: 62, portTaken: 48 } as const;

export interface Running {
  readonly pid: number;
  /** Settles with the exit code, `null` after a signal. */
  readonly ended: Promise<number | null>;
  stop(): Promise<void>;
}

/**
 * Starts mongod in a session of its own, so that Ctrl-C reaches Placeweave first, with a companion that ends it when
 * Placeweave dies without a word.
 */
export function spawnMongod(binary: string, folder: DataFolder, port: number): Running {
  const child = spawn(binary, options(folder, port), { stdio: 'ignore', detached: true });
  const ended = new Promise<number | null>((settle) => {
    child.once('error', () => settle(1));
    child.once('exit', (code) => settle(code));
  });
  const companion = child.pid === undefined ? null : spawnCompanion(child.pid);
  ended.then(() => companion?.stdin?.end());
  return { pid: child.pid ?? 0, ended, stop: () => stop(child, ended) };
}

function options(folder: DataFolder, port: number): string[] {
  return [
    ['--dbpath', folder.database],
    ['--port', String(port)],
    ['--bind_ip', '127.0.0.1'],
    ['--replSet', REPLICA_SET],
    ['--keyFile', folder.keyFile],
    ['--logpath', folder.logFile, '--logappend', '--quiet'],
    ['--wiredTigerCacheSizeGB', '0.5'],
    ['--oplogSize', '512'],
    ['--setParameter', 'diagnosticDataCollectionEnabled=false'],
    // A single member has nobody to hand over to: the 15 s that a primary waits for that would only delay a restart.
    ['--setParameter', 'shutdownTimeoutMillisForSignaledShutdown=0'],
    process.platform === 'win32' ? [] : ['--nounixsocket'],
  ].flat();
}

/** Its input closes when Placeweave ends, however that happens; then it asks mongod to shut down, and insists after 8 s. */
const COMPANION = `
const pid = Number(process.argv[1]);
const tell = (signal) => { try { process.kill(pid, signal); } catch { process.exit(0); } };
process.on('SIGINT', () => {}).on('SIGTERM', () => {}).on('SIGHUP', () => {});
process.stdin.resume().on('end', () => {
  tell('SIGTERM');
  setInterval(() => tell(0), 50);
  setTimeout(() => { tell('SIGKILL'); process.exit(0); }, 8000);
});`;

function spawnCompanion(pid: number): ChildProcess {
  const companion = spawn(process.execPath, ['-e', COMPANION, String(pid)], {
    stdio: ['pipe', 'ignore', 'ignore'],
    detached: true,
    env: {},
  });
  companion.unref();
  companion.stdin?.on('error', () => undefined);
  return companion;
}

async function stop(child: ChildProcess, ended: Promise<unknown>): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  child.kill('SIGTERM');
  const insist = setTimeout(() => child.kill('SIGKILL'), 15_000);
  await ended;
  clearTimeout(insist);
}

/** The wished port if it is free, else any free one. */
export async function freePort(wished: number): Promise<number> {
  return (await tryPort(wished)) ?? (await tryPort(0)) ?? wished;
}

function tryPort(port: number): Promise<number | null> {
  return new Promise((settle) => {
    const server = createServer();
    server.once('error', () => settle(null));
    server.listen(port, '127.0.0.1', () => {
      const address = server.address();
      const found = typeof address === 'object' && address !== null ? address.port : null;
      server.close(() => settle(found));
    });
  });
}
