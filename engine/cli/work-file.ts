import { readFileSync } from 'node:fs';
import { type Action, parseAction, parseProblem, replay, type Work } from '../index.ts';
import { faultText, stop } from './arguments.ts';

interface Line {
  readonly text: string;
  readonly number: number;
}

function linesOf(file: string): Line[] {
  try {
    return readFileSync(file, 'utf8')
      .split('\n')
      .map((text, index) => ({ text: text.trim(), number: index + 1 }))
      .filter(({ text }) => text !== '');
  } catch (error) {
    return stop(`Cannot read ${file}: ${(error as Error).message}`, 1);
  }
}

function jsonOf(file: string, { text, number }: Line): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return stop(`${file}, line ${number} is not JSON.`, 1);
  }
}

/** The work in a file: the problem on its first line, one action on each line after it. */
export function workIn(file: string): Work {
  const [first, ...rest] = linesOf(file);
  if (first === undefined) stop(`${file} is empty: its first line is the problem.`, 1);
  const problem = parseProblem(jsonOf(file, first));
  if (!problem.ok) stop(`${file}, line ${first.number}: ${faultText(problem.fault)}`, 1);
  const actions = rest.map((line): Action => {
    const action = parseAction(jsonOf(file, line));
    return action.ok
      ? action.value
      : stop(`${file}, line ${line.number}: ${faultText(action.fault)}`, 1);
  });
  return replay(problem.value, actions);
}
