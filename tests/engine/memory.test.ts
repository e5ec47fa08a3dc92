import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Action, CONTROLS, type Problem, replay, type Work } from '../../engine/index.ts';
import { advance, startRun, viewOf } from '../../engine/judge/run.ts';
import { stageRules } from '../../engine/stages/known.ts';
import { CellsPupil, randomCellsHabits } from '../oracle/cells-pupil.ts';
import { CELLS_SLIPS } from '../oracle/cells-slips.ts';
import { chanceOf } from '../oracle/chance.ts';
import { PaperPupil, randomPaperHabits } from '../oracle/paper-pupil.ts';
import { PAPER_SLIPS } from '../oracle/paper-slips.ts';
import { anyAction } from './any-action.ts';
import { actionsOf, problemOf } from './play.ts';
import { randomNumber } from './random.ts';

/** Takes whatever it is told to remember, and knows nothing of it. */
const FORGETFUL = new Proxy([], {
  get: (_, key) => (key === 'length' ? Number.POSITIVE_INFINITY : undefined),
  set: () => true,
});

/** Judged as if nothing had ever been read before. */
function replayForgetting(problem: Problem, actions: readonly Action[]): Work {
  const started = startRun(problem, stageRules(problem.stage));
  const run = { ...started, memo: FORGETFUL, plan: { ...started.plan, memo: FORGETFUL } };
  for (const action of actions) advance(run, action);
  return viewOf(run);
}

function expectSame(problem: Problem, actions: readonly Action[]): void {
  expect(replay(problem, actions)).toEqual(replayForgetting(problem, actions));
}

describe('what the judge remembers of a work changes no judgement', () => {
  it.each(['bars', 'facts', 'record', 'cells', 'paper', 'open'] as const)(
    'whatever was done: %s',
    (stage) => {
      fc.assert(
        fc.property(fc.array(anyAction(), { maxLength: 40 }), (actions) => {
          expectSame(problemOf({ stage, multiplicand: '934', multiplier: '314' }), actions);
        }),
        { numRuns: 60 },
      );
    },
  );

  it('of written work with a slip, and with whatever was done meanwhile', () => {
    fc.assert(
      fc.property(fc.nat(), fc.array(anyAction(), { maxLength: 12 }), (seed, strange) => {
        const chance = chanceOf(seed);
        const problem = problemOf({
          stage: 'paper',
          multiplicand: randomNumber(chance, 1 + chance.below(4)),
          multiplier: randomNumber(chance, 1 + chance.below(3)),
        });
        const { multiplicand, multiplier, mat } = problem;
        const { slip } = chance.pick(Object.values(PAPER_SLIPS))(chance);
        const given = { across: multiplicand.digits, up: multiplier.digits, ...mat };
        const pupil = new PaperPupil(given, randomPaperHabits(chance), chance, slip);
        const actions = actionsOf(pupil.work());
        for (const action of strange) actions.splice(chance.below(actions.length), 0, action);
        expectSame(problem, actions);
      }),
      { numRuns: 120 },
    );
  });

  it('of facts on squares with a slip, and with whatever was done meanwhile', () => {
    fc.assert(
      fc.property(fc.nat(), fc.array(anyAction(), { maxLength: 12 }), (seed, strange) => {
        const chance = chanceOf(seed);
        const problem = problemOf({
          stage: 'cells',
          multiplicand: randomNumber(chance, 1 + chance.below(4)),
          multiplier: randomNumber(chance, 1 + chance.below(3)),
          policy: { control: chance.pick(CONTROLS) },
        });
        const { multiplicand, multiplier, mat } = problem;
        const given = { across: multiplicand.digits, up: multiplier.digits, ...mat };
        const slips = chance.pick(Object.values(CELLS_SLIPS))(chance).slip;
        const ways = randomCellsHabits(chance);
        const pupil = new CellsPupil(given, randomPaperHabits(chance), ways, chance, slips);
        const actions = actionsOf(pupil.work());
        for (const action of strange) actions.splice(chance.below(actions.length), 0, action);
        expectSame(problem, actions);
      }),
      { numRuns: 120 },
    );
  });

  it.each([
    {
      multiplicand: '166.3',
      multiplier: '823',
      laid: { square: [0, 1], kind: 6, count: 3 },
      line: 'partial:2',
      row: 0,
      written: [
        [0, 8],
        [-1, 9],
      ],
      end: 'problem',
    },
    {
      multiplicand: '25805',
      multiplier: '37979',
      laid: { square: [1, 1], kind: 7, count: 2 },
      line: 'partial:3',
      row: 1,
      written: [
        [1, 5],
        [2, 5],
        [3, 0],
      ],
      end: 'row:1',
    },
  ])(
    'of a row that may be read from the mat or from the numbers: $multiplicand × $multiplier',
    ({ multiplicand, multiplier, laid, line, row, written, end }) => {
      const told = [
        { do: 'layBars', ...laid },
        { do: 'begin', line, row },
        ...written.map(([place, digit]) => ({ do: 'write', line, place, digit })),
        { do: 'finish', what: end },
      ];
      const policy = { control: 'checkpoint', laying: 'turns' };
      expectSame(problemOf({ stage: 'record', multiplicand, multiplier, policy }), actionsOf(told));
    },
  );

  it.each([
    {
      multiplicand: '81.3',
      multiplier: '4',
      told: [
        { do: 'write', line: 'carry:0', place: 1, digit: 5 },
        { do: 'write', line: 'product', place: 1, digit: 5 },
        { do: 'write', line: 'product', place: 3, digit: 3 },
      ],
    },
    {
      multiplicand: '4303',
      multiplier: '10019',
      told: [
        { do: 'begin', line: 'partial:0', row: 4 },
        { do: 'write', line: 'partial:0', place: 3, digit: 0 },
        { do: 'write', line: 'partial:0', place: 6, digit: 3 },
        { do: 'write', line: 'carry:0', place: 3, digit: 0 },
        { do: 'begin', line: 'partial:0', row: 0 },
      ],
    },
  ])(
    'of a line that stands too far to one side, with carries over it: $multiplicand × $multiplier',
    ({ multiplicand, multiplier, told }) => {
      const end = { do: 'finish', what: 'problem' };
      expectSame(
        problemOf({ stage: 'paper', multiplicand, multiplier }),
        actionsOf([...told, end]),
      );
    },
  );
});
