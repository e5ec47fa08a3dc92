// Makes a fresh clone ready: installs what package-lock.json asks for and builds the pages, each only when out of date.
// Plain JavaScript on purpose: it runs before anything is installed.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  process.stderr.write(
    `Placeweave needs Node.js 20.19 or newer; this is ${process.versions.node}.\n`,
  );
  process.exit(1);
}

const newest = (path) => {
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  return Math.max(
    0,
    ...readdirSync(path)
      .filter((name) => name !== 'dist')
      .map((name) => newest(join(path, name))),
  );
};
const age = (path) => (existsSync(path) ? statSync(path).mtimeMs : 0);
// What they say goes to the error output: the other one belongs to whoever was asked for.
const run = (command, args) => {
  process.stderr.write(`${command} ${args.join(' ')}\n`);
  const { status } = spawnSync(command, args, {
    cwd: root,
    stdio: ['ignore', process.stderr, 'inherit'],
    shell: process.platform === 'win32',
  });
  if (status !== 0) process.exit(status ?? 1);
};

if (age(join(root, 'node_modules/.package-lock.json')) < age(join(root, 'package-lock.json'))) {
  run('npm', ['ci', '--no-audit', '--no-fund']);
}
const sources = Math.max(
  newest(join(root, 'client')),
  newest(join(root, 'engine')),
  age(join(root, 'package-lock.json')),
);
if (age(join(root, 'client/dist/.vite/manifest.json')) < sources)
  run('npm', ['run', '-s', 'build']);
