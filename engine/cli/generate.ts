import { readFileSync } from 'node:fs';
import { makeProblems, parseSpecification } from '../problems/index.ts';
import type { Fault } from '../result.ts';
import { faultText, readArguments, stop } from './arguments.ts';

const USAGE = 'Usage: npm run -s generate -- SPEC.json';

function writtenIn(file: string): unknown {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch (error) {
    return stop(`Cannot read ${file}: ${(error as Error).message}`, 1);
  }
}

/** A refusal is an answer too: as JSON on standard output, in words on standard error. */
function refuse(fault: Fault): never {
  console.log(JSON.stringify({ error: fault }));
  return stop(faultText(fault), 1);
}

const { words } = readArguments(process.argv.slice(2), { flags: [], options: [] }, USAGE);
const [file, ...more] = words;
if (file === undefined || more.length > 0) stop(USAGE, 2);
const specification = parseSpecification(writtenIn(file));
if (!specification.ok) refuse(specification.fault);
const made = makeProblems(specification.value);
if (!made.ok) refuse(made.fault);
const { count, problems } = made.value;
console.log(JSON.stringify({ count: String(count), problems }));
