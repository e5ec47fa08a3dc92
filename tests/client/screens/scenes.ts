import {
  type Action,
  parseProblem,
  type Stage,
  type WrittenProblem,
  worked,
} from '../../../engine/index.ts';

/** A moment of a child's work to be looked at: `then` is pressed once the page is there. */
export interface Scene {
  readonly name: string;
  readonly problem: WrittenProblem;
  readonly actions: readonly Action[];
  /** Names of buttons, or of squares ("row …"), in order. */
  readonly then: readonly string[];
  /** What is said once that is done, if it takes a moment. */
  readonly says: RegExp | null;
}

const PROBLEMS: Readonly<Record<Stage, WrittenProblem>> = {
  walk: { stage: 'walk', seed: 3, prompts: 8, categories: true },
  build: { stage: 'build', multiplicand: '4027', multiplier: '318' },
  bars1: { stage: 'bars1', multiplicand: '3476', multiplier: '7' },
  bars: { stage: 'bars', multiplicand: '934', multiplier: '314' },
  facts: { stage: 'facts', multiplicand: '468', multiplier: '73' },
  record: { stage: 'record', multiplicand: '934', multiplier: '314' },
  cells: { stage: 'cells', multiplicand: '468', multiplier: '73' },
  paper: { stage: 'paper', multiplicand: '4068', multiplier: '273' },
  open: { stage: 'open', multiplicand: '2.5', multiplier: '1.4' },
};

/** The presentation up to the n-th action that passes the test, without it. */
const until = (
  problem: WrittenProblem,
  test: (action: Action) => boolean,
  n = 1,
): readonly Action[] => {
  const parsed = parseProblem(problem);
  if (!parsed.ok) throw new Error(parsed.fault.code);
  const actions = worked(parsed.value).map(({ action }) => action);
  let found = 0;
  const end = actions.findIndex((action) => {
    if (test(action)) found += 1;
    return found === n;
  });
  return end < 0 ? actions : actions.slice(0, end);
};

const isDo =
  (...names: readonly Action['do'][]) =>
  (action: Action): boolean =>
    names.includes(action.do);

const scene = (
  name: string,
  stage: Stage,
  actions: (problem: WrittenProblem) => readonly Action[],
  then: readonly string[] = [],
  says: RegExp | null = null,
  problem = PROBLEMS[stage],
): Scene => ({ name: `${stage}-${name}`, problem, actions: actions(problem), then, says });

/** The largest mat and the largest sheet. */
const full = (stage: Stage, actions: (problem: WrittenProblem) => readonly Action[]): Scene =>
  scene('full', stage, actions, [], null, {
    stage,
    multiplicand: '9999999',
    multiplier: '987654',
  });

/** The second square from the right, in the bottom row. */
const UNITS_TENS = 'row units, column tens,';
const NEVER = () => false;
const CHECK: Action = { do: 'check' };

/** Every stage as it begins or stands half done, with something to look at again, with help, and at its end. */
export const SCENES: readonly Scene[] = [
  scene('asked', 'walk', () => []),
  scene('find', 'walk', (problem) => [...until(problem, isDo('say'), 2)]),
  scene('again', 'walk', () => [{ do: 'say', prompt: 0, answer: '100' }, CHECK], [
    'Question 1, look again',
  ]),
  scene('tiles', 'build', (problem) => until(problem, isDo('layTile'), 3)),
  scene('read', 'build', (problem) => until(problem, isDo('say'))),
  scene('laying', 'bars1', (problem) => until(problem, isDo('layBars'), 3)),
  scene('open', 'bars1', (problem) => until(problem, isDo('count'), 2), [UNITS_TENS]),
  scene('ten', 'bars1', (problem) => until(problem, isDo('count'), 2), [
    UNITS_TENS,
    'bar of 7, 1 of 11',
    'bar of 7, 2 of 11',
  ]),
  scene('tens', 'bars1', (problem) => until(problem, isDo('exchange'), 2), [UNITS_TENS]),
  scene('sliding', 'bars', (problem) => until(problem, isDo('slide'), 2)),
  scene('again', 'bars', (problem) => [
    ...until(problem, isDo('count')),
    { do: 'count', square: [0, 0], total: 17 },
    CHECK,
  ]),
  scene('help', 'bars', (problem) => until(problem, isDo('layBars'), 2), ['Help me'], /\?/),
  scene('laying', 'facts', (problem) => until(problem, isDo('layBars'), 3)),
  scene('writing', 'record', (problem) => until(problem, isDo('write'), 7)),
  scene('writing', 'cells', (problem) => until(problem, isDo('write'), 5)),
  scene('adding', 'cells', (problem) =>
    until(problem, (action) => action.do === 'write' && 'line' in action, 3),
  ),
  scene('writing', 'paper', (problem) => until(problem, isDo('write'), 9)),
  scene('again', 'paper', (problem) => [
    ...until(problem, isDo('finish'), 1),
    { do: 'write', line: 'partial:0', place: 1, digit: 9 },
    CHECK,
  ]),
  full('bars', (problem) => until(problem, isDo('layBars'), 40)),
  full('record', (problem) => until(problem, isDo('finish'), 6)),
  full('cells', (problem) => until(problem, isDo('finish'), 6)),
  full('paper', (problem) => until(problem, isDo('finish'), 7)),
  scene('working', 'open', (problem) => until(problem, isDo('say'))),
  scene('result', 'bars', (problem) => {
    const all = until(problem, NEVER);
    const at = all.findIndex(isDo('count'));
    const wrong: Action = { do: 'count', square: [0, 0], total: 17 };
    return [...all.slice(0, at), wrong, CHECK, { do: 'undo' }, ...all.slice(at)];
  }),
];
