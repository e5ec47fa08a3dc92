/**
 * `npm run check:mutants`: plants each one-line mutant of `mutants.ts` in a copy of the last commit and runs the tests
 * that guard that line; the work tree is neither read nor touched, so that work may go on in it. A mutant that the tests
 * let live is a hole in the tests. Exit 0 only if every mutant turned them red and the untouched copy is green.
 */
import { execFileSync, spawn } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Mutant, mutants } from './mutants.ts';

const root = join(dirname(fileURLToPath(import.meta.url)), '../..');
const WORKERS = 2;
/** A mutant may make the code loop: a run that outlasts this many times the untouched one counts as red. */
const PATIENCE = 5;

/** The last commit; the files as they lie where there is no repository (an unpacked release). */
function copyOfTheCommit(): string {
  const copy = mkdtempSync(join(tmpdir(), 'placeweave-mutants-'));
  if (existsSync(join(root, '.git'))) {
    const files = execFileSync('git', ['archive', 'HEAD'], { cwd: root, maxBuffer: 2 ** 30 });
    execFileSync('tar', ['-x', '-C', copy], { input: files });
  } else {
    const skip = new Set(['node_modules', '.data', 'dist'].map((name) => join(root, name)));
    cpSync(root, copy, { recursive: true, filter: (path) => !skip.has(path) });
  }
  symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'));
  return copy;
}

/** With everything that the tests have started: a mutant may loop in a process that outlives them. */
function endGroup(leader: number): void {
  try {
    process.kill(-leader, 'SIGKILL');
  } catch {
    // Nobody of the group is left.
  }
}

/** Runs the named test files in `folder`; true when they are green. */
function green(folder: string, tests: readonly string[], limitMs: number): Promise<boolean> {
  return new Promise((done) => {
    const child = spawn('npx', ['vitest', 'run', '--bail=1', ...tests], {
      cwd: folder,
      stdio: 'ignore',
      detached: true,
    });
    const timer = setTimeout(() => endGroup(child.pid!), limitMs);
    child.on('exit', (code) => {
      clearTimeout(timer);
      endGroup(child.pid!);
      done(code === 0);
    });
  });
}

/** The file's text with the mutant planted; refuses a line that is not there exactly once, since code moves. */
function plant(text: string, mutant: Mutant): string {
  const places = text.split(mutant.line).length - 1;
  if (places !== 1) {
    throw new Error(
      `${mutant.file}: the line to change stands there ${places} times: ${mutant.line}`,
    );
  }
  return text.replace(mutant.line, () => mutant.becomes);
}

async function isCaught(folder: string, mutant: Mutant, limitMs: number): Promise<boolean> {
  const path = join(folder, mutant.file);
  const text = readFileSync(path, 'utf8');
  writeFileSync(path, plant(text, mutant));
  try {
    return !(await green(folder, mutant.tests, limitMs));
  } finally {
    writeFileSync(path, text);
  }
}

async function main(): Promise<number> {
  const only = process.argv[2];
  const chosen = mutants.filter((mutant) => !only || mutant.file.includes(only));
  const folders = Array.from({ length: WORKERS }, copyOfTheCommit);
  try {
    for (const mutant of chosen)
      plant(readFileSync(join(folders[0]!, mutant.file), 'utf8'), mutant);
    const started = Date.now();
    const guards = [...new Set(chosen.flatMap((mutant) => mutant.tests))];
    if (!(await green(folders[0]!, guards, 15 * 60_000))) {
      console.log('The tests are red without any mutant: mend them first.');
      return 1;
    }
    const limitMs = Math.max(60_000, PATIENCE * (Date.now() - started));
    const queue = [...chosen];
    let alive = 0;
    await Promise.all(
      folders.map(async (folder) => {
        for (let mutant = queue.shift(); mutant; mutant = queue.shift()) {
          const caught = await isCaught(folder, mutant, limitMs);
          if (!caught) alive += 1;
          console.log(`${caught ? 'caught' : 'ALIVE '} ${mutant.file}: ${mutant.breaks}`);
        }
      }),
    );
    console.log(`\n${chosen.length} mutants, ${chosen.length - alive} caught, ${alive} alive`);
    return alive === 0 && chosen.length > 0 ? 0 : 1;
  } finally {
    for (const folder of folders) rmSync(folder, { recursive: true, force: true });
  }
}

process.exit(await main());
