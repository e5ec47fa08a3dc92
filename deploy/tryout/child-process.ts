import { spawn } from 'node:child_process';
import { createWriteStream } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('../..', import.meta.url));

const LEAVE_WITH_PARENT = new URL('leave-with-parent.ts', import.meta.url).href;

export interface ChildProcess {
  pid: number;
  /** Milliseconds since 1970. */
  startedAt: number;
  /** How it ended: the exit code or the signal. */
  ended: Promise<number | NodeJS.Signals>;
  /** Asks it to end; resolves when it has. */
  stop(): Promise<void>;
  kill(signal: NodeJS.Signals): void;
  /** The last lines that it wrote. */
  lastWords(): Promise<string>;
}

const environment = (added: Record<string, string>): NodeJS.ProcessEnv => {
  const { NODE_OPTIONS: _, ...own } = process.env;
  return { ...own, ...added };
};

const alive = new Set<{ kill(signal: NodeJS.Signals): void }>();
process.on('exit', () => {
  for (const child of alive) child.kill('SIGTERM');
});

/**
 * Runs a TypeScript file of this project as a process; what it says goes to the log file. In a process group of its
 * own, so that Ctrl-C reaches the parent first, which ends its children in order; a parent that is killed takes them
 * along.
 */
export const startChild = (
  file: string,
  args: readonly string[],
  env: Record<string, string>,
  logFile: string,
): ChildProcess => {
  const child = spawn(
    process.execPath,
    ['--import', 'tsx', '--import', LEAVE_WITH_PARENT, file, ...args],
    {
      cwd: ROOT,
      env: environment(env),
      stdio: ['pipe', 'pipe', 'pipe'],
      detached: true,
    },
  );
  alive.add(child);
  const log = createWriteStream(logFile, { flags: 'a', mode: 0o600 });
  child.stdout.pipe(log, { end: false });
  child.stderr.pipe(log, { end: false });
  const ended = new Promise<number | NodeJS.Signals>((settle) => {
    child.once('close', (code, signal) => {
      alive.delete(child);
      log.end(() => settle(code ?? signal ?? 1));
    });
  });
  const kill = (signal: NodeJS.Signals) => void child.kill(signal);
  return {
    pid: child.pid ?? 0,
    startedAt: Date.now(),
    ended,
    kill,
    async stop() {
      kill('SIGTERM');
      const insist = setTimeout(() => kill('SIGKILL'), 20_000);
      await ended;
      clearTimeout(insist);
    },
    async lastWords() {
      const lines = (await readFile(logFile, 'utf8')).trimEnd().split('\n');
      return lines.slice(-12).join('\n');
    },
  };
};

/** Resolves when the address answers 200; rejects when the process ends first or the time is over. */
export const untilReady = async (
  child: ChildProcess,
  address: string,
  patience: number,
): Promise<void> => {
  let ended = false;
  void child.ended.then(() => {
    ended = true;
  });
  const until = Date.now() + patience;
  while (Date.now() < until && !ended) {
    const answer = await fetch(address, { signal: AbortSignal.timeout(2000) }).catch(() => null);
    if (answer?.ok) return;
    await new Promise((done) => setTimeout(done, 50));
  }
  throw new Error(`${address} did not answer.\n${await child.lastWords()}`);
};
