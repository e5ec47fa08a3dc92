import { type ChildProcess, fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { BLOCK } from './check-cases.ts';

/**
 * `npm run -s check:engine -- [--cases N] [--seed S]`: a process for each core, progress on standard error, and one line
 * {"cases","seed","faults","examples"} at the end; exit code 1 on any fault.
 */
function option(name: string, usual: number): number {
  const at = process.argv.indexOf(`--${name}`);
  const value = at < 0 ? usual : Number(process.argv[at + 1]);
  if (Number.isSafeInteger(value) && value >= 0) return value;
  process.stderr.write('Usage: npm run -s check:engine -- [--cases N] [--seed S]\n');
  process.exit(2);
}

const cases = option('cases', 20_000);
const seed = option('seed', 1);
const blocks = Math.ceil(cases / BLOCK);
const faults: string[] = [];
let given = 0;
let done = 0;

/** One block after the other, whoever is free; a process that dies takes the check with it. */
function work(child: ChildProcess): Promise<void> {
  return new Promise((resolve, reject) => {
    const next = () => {
      if (given === blocks) child.disconnect();
      else {
        const size = Math.min(BLOCK, cases - given * BLOCK);
        child.send({ block: given, cases: size, seed });
        given += 1;
      }
    };
    child.on('message', (found) => {
      faults.push(...(found as string[]));
      done += 1;
      if (done % 20 === 0)
        process.stderr.write(`${done * BLOCK} of ${cases}, ${faults.length} faults\n`);
      next();
    });
    child.on('error', reject);
    child.on('exit', (code) => (code === 0 ? resolve() : reject(new Error(`ended with ${code}`))));
    next();
  });
}

const processes = Math.min(availableParallelism(), blocks);
const block = new URL('./check-block.ts', import.meta.url);
await Promise.all(Array.from({ length: processes }, () => work(fork(block))));
const told = { cases, seed, faults: faults.length, examples: faults.slice(0, 10) };
process.stdout.write(`${JSON.stringify(told)}\n`);
process.exitCode = faults.length === 0 ? 0 : 1;
