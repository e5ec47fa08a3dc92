import { client } from './client.ts';
import { engine } from './engine.ts';
import type { Bench } from './figure.ts';

/** Every bench by its name; a new one is a file here and a line below. */
const BENCHES: Readonly<Record<string, Bench>> = { client, engine };

const USAGE = `Usage: npm run -s bench -- ${Object.keys(BENCHES).join('|')} [--json]`;

/** `npm run -s bench -- NAME [--json]`: measures against a floor in the same run; exit code 1 where a budget is not held. */
const [name = '', ...options] = process.argv.slice(2);
const bench = Object.hasOwn(BENCHES, name) ? BENCHES[name] : undefined;
if (bench === undefined || options.some((option) => option !== '--json')) {
  process.stderr.write(`${USAGE}\n`);
  process.exit(2);
}
const { figures, ...measured } = await bench();
const holds = figures.every((figure) => figure.holds);
const inWords = figures.map(
  ({ what, measured: own, unit, ratio, budget, holds: held }) =>
    `${what}: ${own.toPrecision(4)} ${unit}${ratio === null ? '' : `, ratio ${ratio.toPrecision(3)}`} (budget ${budget}): ${held ? 'holds' : 'does NOT hold'}`,
);
const told = JSON.stringify({ bench: name, ...measured, holds, figures });
process.stdout.write(`${options.length > 0 ? told : inWords.join('\n')}\n`);
process.exitCode = holds ? 0 : 1;
