import { describe, expect, it } from 'vitest';
import { type Action, fractionText, replay, score, type Work, worked } from '../../engine/index.ts';
import { problemOf } from './play.ts';

const FINISH: Action = { do: 'finish', what: 'problem' };
const STAGES = ['bars', 'facts', 'record', 'cells', 'paper'] as const;

const problemAt = (
  stage: (typeof STAGES)[number] | 'bars1',
  multiplier = '34',
  multiplicand = '27',
) => problemOf({ stage, multiplicand, multiplier });
/** Zeros in the numbers, in the rows and in the product: nothing is as due there without any work. */
const WITH_ZEROS = ['25', '304'] as const;
const awarded = (work: Work) => fractionText(score([work]).awarded);
const actionsOf = (work: Work) => worked(work.problem).map(({ action }) => action);

describe('work never begun earns nothing', () => {
  it.each(STAGES)('at %s an untouched problem is worth nothing', (stage) => {
    const work = replay(problemAt(stage), [FINISH]);
    expect(awarded(work)).toBe('0');
    expect(work.steps.every(({ status }) => status === 'notRight')).toBe(true);
    expect(work.complete).toBe(false);
  });

  it.each(STAGES)('at %s not even where zeros are due', (stage) => {
    const work = replay(problemAt(stage, ...WITH_ZEROS), [FINISH]);
    expect(work.steps.filter(({ status }) => status !== 'notRight')).toEqual([]);
  });

  it.each(['bars', 'facts', 'record', 'cells'] as const)(
    'at %s right tiles of one number beside zeros are worth those tiles',
    (stage) => {
      const { problem } = replay(problemAt(stage, ...WITH_ZEROS), []);
      const tiles = worked(problem)
        .map(({ action }) => action)
        .filter((action) => action.do === 'layTile')
        .map((tile) => (tile.edge === 'right' ? { ...tile, digit: 0 } : tile));
      const zeros = [0, 1, 2, 3].map(
        (place): Action => ({ do: 'write', line: 'product', place, digit: 0 }),
      );
      for (const written of [[], zeros]) {
        expect(awarded(replay(problem, [...tiles, ...written, FINISH]))).toBe('3');
      }
    },
  );

  it('nor at bars1', () => {
    expect(awarded(replay(problemAt('bars1', '3'), [FINISH]))).toBe('0');
  });

  it.each(['bars', 'facts', 'record', 'cells'] as const)(
    'at %s tiles alone are worth the tiles',
    (stage) => {
      const whole = replay(problemAt(stage), []);
      const tiles = actionsOf(whole).filter((action) => action.do === 'layTile');
      expect(awarded(replay(whole.problem, [...tiles, FINISH]))).toBe(String(tiles.length));
    },
  );

  it.each([
    ['a digit of the product', [{ do: 'write', line: 'product', place: 0, digit: 0 }]],
    ['a saying', [{ do: 'say', row: 0, answer: '5' }]],
    ['a bar', [{ do: 'layBars', square: [0, 0], kind: 1, count: 1 }]],
  ] as [string, Action[]][])('%s alone opens no way round the work', (_, junk) => {
    for (const stage of ['bars', 'facts', 'record', 'cells', 'paper'] as const) {
      const { num, den } = score([replay(problemAt(stage), [...junk, FINISH])]).fraction;
      expect(10n * num < den, `${stage}: ${num}/${den}`).toBe(true);
    }
  });

  it('tiles of nothing but zeros open no way round the work', () => {
    const tiles = (['bottom', 'right'] as const).flatMap((edge) =>
      [0, 1].map((index): Action => ({ do: 'layTile', edge, index, digit: 0 })),
    );
    expect(awarded(replay(problemAt('bars'), [...tiles, FINISH]))).toBe('0');
  });

  it('a row left out loses its own steps, and the row that was worked keeps its marks', () => {
    const { problem } = replay(problemAt('bars'), []);
    const actions = actionsOf(replay(problem, [])).filter(
      (action) => action.do === 'layTile' || ('square' in action && action.square[0] === 0),
    );
    const { steps } = replay(problem, [...actions, FINISH]);
    const statusOf = (id: string) => steps.find((step) => step.id === id)?.status;
    expect(['laid:0:0', 'laid:0:1', 'counted:0:0'].map(statusOf)).toEqual([
      'first',
      'first',
      'first',
    ]);
    expect(['laid:1:0', 'laid:1:1', 'counted:1:0', 'said:1', 'slid:1'].map(statusOf)).toEqual(
      Array(5).fill('notRight'),
    );
  });
});
