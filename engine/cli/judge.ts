import { readFileSync } from 'node:fs';
import {
  type Action,
  fractionText,
  parseAction,
  parseProblem,
  replay,
  score,
  type Work,
} from '../index.ts';
import { faultText, readArguments, stop } from './arguments.ts';

const USAGE = 'Usage: npm run -s judge -- FILE [--json]';

function linesOf(file: string): { text: string; number: number }[] {
  try {
    return readFileSync(file, 'utf8')
      .split('\n')
      .map((text, index) => ({ text: text.trim(), number: index + 1 }))
      .filter(({ text }) => text !== '');
  } catch (error) {
    return stop(`Cannot read ${file}: ${(error as Error).message}`, 1);
  }
}

function jsonOf({ text, number }: { text: string; number: number }): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return stop(`Line ${number} is not JSON.`, 1);
  }
}

function workOf(file: string): Work {
  const [first, ...rest] = linesOf(file);
  if (first === undefined) stop(`${file} is empty: its first line is the problem.`, 1);
  const problem = parseProblem(jsonOf(first));
  if (!problem.ok) stop(`Line ${first.number}: ${faultText(problem.fault)}`, 1);
  const actions = rest.map((line): Action => {
    const action = parseAction(jsonOf(line));
    return action.ok ? action.value : stop(`Line ${line.number}: ${faultText(action.fault)}`, 1);
  });
  return replay(problem.value, actions);
}

function described(work: Work): Record<string, unknown> {
  const { awarded, available, fraction } = score([work]);
  return {
    score: {
      awarded: fractionText(awarded),
      available: fractionText(available),
      fraction: fractionText(fraction),
    },
    steps: work.steps,
    judgements: work.judgements,
    complete: work.complete,
    position: work.position,
    refused: work.log.flatMap(({ refused }, action) => (refused ? [{ action, refused }] : [])),
  };
}

function inWords(work: Work): string {
  const { awarded, available } = score([work]);
  return [
    `${fractionText(awarded)} of ${fractionText(available)}${work.complete ? ', complete' : ''}`,
    ...work.steps.map(({ id, status }) => `${id.padEnd(16)} ${status}`),
    '',
  ].join('\n');
}

const { words, options } = readArguments(
  process.argv.slice(2),
  { flags: ['json'], options: [] },
  USAGE,
);
if (words.length !== 1) stop(USAGE, 2);
const work = workOf(words[0]!);
process.stdout.write(
  options['json'] === true ? `${JSON.stringify(described(work))}\n` : inWords(work),
);
