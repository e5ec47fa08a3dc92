import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Action,
  act,
  nextMove,
  type Problem,
  parseProblem,
  replay,
  startWork,
  type Work,
  worked,
  writeProblem,
} from '../../engine/index.ts';
import { apply } from '../../engine/mat/apply.ts';
import { matValue } from '../../engine/mat/position.ts';
import { anyAction } from './any-action.ts';
import { isFull, play, problemOf, statusOf } from './play.ts';

const PROBLEM = { multiplicand: '934', multiplier: '314' };

const anyActions = fc.array(anyAction(), { maxLength: 40 });

function fold(problem: Problem, actions: readonly Action[]): Work {
  return actions.reduce(act, startWork(problem));
}

describe('replay', () => {
  it('is the fold of act, whatever was done', () => {
    fc.assert(
      fc.property(anyActions, (actions) => {
        const problem = problemOf(PROBLEM);
        expect(replay(problem, actions)).toEqual(fold(problem, actions));
      }),
      { numRuns: 150 },
    );
  });

  it('leaves the work that it goes on from as it was', () => {
    fc.assert(
      fc.property(anyActions, (actions) => {
        const work = startWork(problemOf(PROBLEM));
        const before = JSON.stringify(work);
        for (const action of actions) act(work, action);
        expect(JSON.stringify(work)).toBe(before);
      }),
      { numRuns: 50 },
    );
  });

  it('keeps what cannot be done in the log, where it changes nothing', () => {
    const told = [{ do: 'slide', from: [1, 0], to: [0, 1] }, { do: 'undo' }];
    const work = play(PROBLEM, told);
    expect(work.log.map(({ refused }) => refused)).toEqual(['emptyPile', 'nothingToUndo']);
    expect(work.position).toEqual(startWork(problemOf(PROBLEM)).position);
  });

  it('goes on from a work that was sent as JSON', () => {
    const problem = problemOf(PROBLEM);
    const actions = worked(problem).map(({ action }) => action);
    const half = replay(problem, actions.slice(0, 30));
    const sent = JSON.parse(JSON.stringify(half)) as Work;
    expect(act(sent, actions[30]!)).toEqual(act(half, actions[30]!));
  });
});

describe('a position', () => {
  it('survives JSON: physics goes on from the copy as from the original', () => {
    fc.assert(
      fc.property(anyActions, (actions) => {
        const problem = problemOf(PROBLEM);
        let position = startWork(problem).position;
        for (const action of actions) {
          const copy = JSON.parse(JSON.stringify(position));
          const after = apply(problem, position, action);
          expect(apply(problem, copy, action)).toEqual(after);
          if (typeof after !== 'string') position = after;
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe('undo', () => {
  const physical = (action: Action): boolean =>
    !['check', 'hint', 'finish', 'undo'].includes(action.do);

  it('brings back the position before the last action that had physics', () => {
    fc.assert(
      fc.property(anyActions, anyAction(), (actions, last) => {
        fc.pre(physical(last));
        const before = replay(problemOf(PROBLEM), actions);
        const after = act(before, last);
        fc.pre(after.log.at(-1)?.refused === undefined);
        expect(act(after, { do: 'undo' }).position).toEqual(before.position);
      }),
      { numRuns: 200 },
    );
  });

  it('leads back to the empty mat, one action at a time, and no further', () => {
    fc.assert(
      fc.property(anyActions, (actions) => {
        const problem = problemOf(PROBLEM);
        let work = replay(problem, actions);
        for (let step = 0; step <= actions.length; step += 1) work = act(work, { do: 'undo' });
        // A finish said before anything was done has no action to be crossed with.
        const { finished: _, ...lying } = work.position;
        expect(startWork(problem).position).toMatchObject(lying);
        expect(work.log.at(-1)?.refused).toBe('nothingToUndo');
      }),
      { numRuns: 50 },
    );
  });

  it('lifts the finish of a row that it crosses, and no other', () => {
    const lay = { do: 'layTile', edge: 'bottom', index: 0, digit: 4 };
    const finish = { do: 'finish', what: 'row:0' };
    expect(play(PROBLEM, [lay, finish, { do: 'undo' }]).finished.rows).toEqual([]);
    expect(play(PROBLEM, [lay, finish, lay, { do: 'undo' }]).finished.rows).toEqual([0]);
  });

  it('stops at the finish of the problem', () => {
    const work = play(PROBLEM, [
      { do: 'layTile', edge: 'bottom', index: 0, digit: 4 },
      { do: 'finish', what: 'problem' },
      { do: 'undo' },
      { do: 'check' },
    ]);
    expect(work.log.slice(2).map(({ refused }) => refused)).toEqual(['finished', 'finished']);
  });

  it('keeps what the mat has answered', () => {
    const wrong = { do: 'layTile', edge: 'bottom', index: 0, digit: 5 };
    const right = { ...wrong, digit: 4 };
    expect(statusOf(play(PROBLEM, [wrong, { do: 'undo' }, right]), 'tile:bottom:0')).toBe('first');
    expect(
      statusOf(play(PROBLEM, [wrong, { do: 'check' }, { do: 'undo' }, right]), 'tile:bottom:0'),
    ).toBe('corrected');
  });
});

describe('the next move', () => {
  it('leads from any position to the finish', () => {
    fc.assert(
      fc.property(anyActions, (actions) => {
        let work = replay(problemOf(PROBLEM), actions);
        for (let moves = 0; moves < 600 && !work.finished.problem; moves += 1) {
          const move = nextMove(work)!;
          work = act(work, move.action);
          expect(work.log.at(-1)?.refused, JSON.stringify(move)).toBeUndefined();
        }
        expect(work.finished.problem, JSON.stringify(nextMove(work))).toBe(true);
      }),
      { numRuns: 150 },
    );
  });

  it('does not go round in circles where a mend of one thing undoes another', () => {
    let work = play(PROBLEM, [
      { do: 'exchange', from: [0, 1], tens: 0, to: [0, 1], ones: 1 },
      { do: 'count', square: [0, 1], total: 23 },
    ]);
    for (let moves = 0; moves < 600 && !work.finished.problem; moves += 1) {
      work = act(work, nextMove(work)!.action);
    }
    expect(work.finished.problem).toBe(true);
  });

  it('is the worked presentation when nothing has gone wrong, with full marks', () => {
    for (const [multiplicand, multiplier] of [
      ['0', '0'],
      ['7', '0'],
      ['0', '30'],
      ['100', '20'],
      ['0.5', '0.02'],
      ['999', '99'],
    ]) {
      const problem = problemOf({ multiplicand, multiplier });
      const work = replay(
        problem,
        worked(problem).map(({ action }) => action),
      );
      expect(isFull(work) && work.complete, `${multiplicand} × ${multiplier}`).toBe(true);
    }
  });
});

describe('the law of the beads', () => {
  it('holds on every right path: counting, making ten, exchanging and sliding change no value', () => {
    const numbers = fc.integer({ min: 0, max: 99_999 });
    fc.assert(
      fc.property(numbers, fc.integer({ min: 0, max: 999 }), (a, b) => {
        const problem = problemOf({ multiplicand: `${a}`, multiplier: `${b}` });
        let work = startWork(problem);
        for (const { action } of worked(problem)) {
          const before = matValue(work.position);
          work = act(work, action);
          if (action.do !== 'layBars') expect(matValue(work.position)).toBe(before);
        }
        expect(matValue(work.position)).toBe(BigInt(a) * BigInt(b));
      }),
      { numRuns: 60 },
    );
  });
});

describe('a written problem', () => {
  it('comes back as it was', () => {
    for (const written of [
      { stage: 'bars', multiplicand: '12.50', multiplier: '0.4' },
      { stage: 'walk', seed: 5, prompts: 3, categories: true },
      { stage: 'open' },
      {
        stage: 'paper',
        multiplicand: '7',
        multiplier: '86',
        policy: { control: 'end', marks: { corrected: '1/2' } },
      },
    ]) {
      const parsed = parseProblem(written);
      expect(parsed.ok && parseProblem(writeProblem(parsed.value))).toEqual(parsed);
    }
  });
});
