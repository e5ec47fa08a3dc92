import { checkCases } from './check-cases.ts';

/** `npm run -s check:engine -- --cases N --seed S`: prints {"cases","seed","faults","examples"}; exit code 1 on any fault. */
function option(name: string, usual: number): number {
  const at = process.argv.indexOf(`--${name}`);
  const value = at < 0 ? usual : Number(process.argv[at + 1]);
  if (Number.isSafeInteger(value) && value >= 0) return value;
  process.stderr.write('Usage: npm run -s check:engine -- [--cases N] [--seed S]\n');
  process.exit(2);
}

const cases = option('cases', 20_000);
const seed = option('seed', 1);
const faults = checkCases(cases, seed);
const told = { cases, seed, faults: faults.length, examples: faults.slice(0, 10) };
process.stdout.write(`${JSON.stringify(told)}\n`);
process.exitCode = faults.length === 0 ? 0 : 1;
