import { describe, expect, it } from 'vitest';
import { act, nextMove, replay, STAGES, type Work, worked } from '../../engine/index.ts';
import { chanceOf } from '../oracle/chance.ts';
import { randomHabits } from '../oracle/habits.ts';
import { Worker } from '../oracle/worker.ts';
import { actionsOf, isFull, play, problemOf, spent, statusOf } from './play.ts';
import { randomNumber } from './random.ts';

/** Goes on with the next sensible moves until the problem is finished. */
function finished(work: Work): Work {
  let going = work;
  for (let moves = 0; moves < 400 && !going.finished.problem; moves += 1) {
    going = act(going, nextMove(going)!.action);
  }
  return going;
}

describe('the worked presentation', () => {
  const numbered = STAGES.filter((stage) => stage !== 'walk');

  it.each(numbered)('of %s earns full marks, zeros and points included', (stage) => {
    const chance = chanceOf(stage.length);
    const most = stage === 'bars1' ? 1 : 3;
    for (let cases = 0; cases < 60; cases += 1) {
      const multiplicand = randomNumber(chance, 1 + chance.below(4));
      const multiplier =
        stage === 'bars1' ? `${chance.below(10)}` : randomNumber(chance, 1 + chance.below(most));
      const problem = problemOf({ stage, multiplicand, multiplier });
      const work = replay(
        problem,
        worked(problem).map(({ action }) => action),
      );
      expect(
        [isFull(work), work.complete, work.log.some(({ refused }) => refused)],
        `${multiplicand} × ${multiplier}`,
      ).toEqual([true, true, false]);
    }
  });

  it('of a walk answers every question', () => {
    for (let seed = 0; seed < 30; seed += 1) {
      const problem = problemOf({ stage: 'walk', seed, prompts: 9, categories: seed % 2 === 0 });
      const work = replay(
        problem,
        worked(problem).map(({ action }) => action),
      );
      expect(isFull(work) && work.complete).toBe(true);
      expect(work.steps).toHaveLength(9);
    }
  });
});

describe('the next sensible move', () => {
  const laid = [
    { do: 'layTile', edge: 'bottom', index: 0, digit: 7 },
    { do: 'layTile', edge: 'right', index: 0, digit: 2 },
    { do: 'layBars', square: [0, 0], kind: 7, count: 2 },
  ];
  const tens = { do: 'makeTen', square: [0, 0], bars: [7, 7], split: { kind: 7, take: 3 } };
  const moved = { do: 'exchange', from: [0, 0], tens: 1, to: [0, 1], ones: 1 };
  const movesAfter = (...told: object[]) =>
    nextMove(play({ stage: 'bars1', multiplicand: '7', multiplier: '2' }, [...laid, ...told]))!
      .action.do;

  it('is to count bars of ten or more', () => expect(movesAfter()).toBe('count'));

  it('asks for no count of what is left below ten once tens were made by hand', () => {
    expect(movesAfter(tens)).toBe('exchange');
    expect(movesAfter(tens, moved)).toBe('say');
    const work = play({ stage: 'bars1', multiplicand: '7', multiplier: '2' }, [
      ...laid,
      tens,
      moved,
    ]);
    expect(spent(finished(work))).toEqual([]);
  });
});

describe('walk', () => {
  const walk = { stage: 'walk', seed: 7, prompts: 3, categories: true };

  it('asks the same of everyone who has the same seed', () => {
    expect(problemOf(walk).prompts).toEqual(problemOf(walk).prompts);
    expect(problemOf({ ...walk, seed: 8 }).prompts).not.toEqual(problemOf(walk).prompts);
  });

  it('takes any square of the place that was asked for', () => {
    const { prompts } = problemOf(walk);
    const asked = prompts[1]!;
    if (asked.ask !== 'square') throw new Error('the second question asks for a square');
    for (let row = 0; row < 4; row += 1) {
      const square = [row, asked.place - row];
      const onMat = square[1]! >= 0 && square[1]! < 9;
      const work = onMat ? play(walk, [{ do: 'say', prompt: 1, answer: square }]) : null;
      if (work !== null) expect(statusOf(work, 'prompt:1')).toBe('first');
    }
    const wrong = play(walk, [{ do: 'say', prompt: 1, answer: [0, (asked.place + 1) % 9] }]);
    expect(statusOf(wrong, 'prompt:1')).toBe('notRight');
  });

  it('counts a wrong answer that was mended after a check as corrected', () => {
    const [first] = problemOf(walk).prompts;
    if (first?.ask !== 'worth') throw new Error('the first question asks for a worth');
    const worth = `1${'0'.repeat(first.square[0] + first.square[1])}`;
    const say = (answer: string) => ({ do: 'say', prompt: 0, answer });
    expect(statusOf(play(walk, [say(`${worth}0`), { do: 'check' }, say(worth)]), 'prompt:0')).toBe(
      'corrected',
    );
    expect(statusOf(play(walk, [say(`${worth}0`), say(worth)]), 'prompt:0')).toBe('first');
  });
});

describe('build', () => {
  const build = { stage: 'build', multiplicand: '30.5', multiplier: '12' };
  const tile = (edge: string, index: number, digit: number) => ({
    do: 'layTile',
    edge,
    index,
    digit,
  });
  const right = [tile('right', 0, 2), tile('right', 1, 1)];
  const bottom = [tile('bottom', 0, 5), tile('bottom', 1, 0), tile('bottom', 2, 3)];
  const say = (prompt: number, answer: string) => ({ do: 'say', prompt, answer });
  const end = { do: 'finish', what: 'problem' };

  it('reads what lies there: a wrong tile read as it lies costs the tile alone', () => {
    const told = [
      ...bottom.slice(0, 2),
      tile('bottom', 2, 8),
      ...right,
      say(0, '80.5'),
      say(1, '12'),
      end,
    ];
    expect(spent(play(build, told))).toEqual(['tile:bottom:2']);
  });

  it('reads a number with a tile forgotten as it was given', () => {
    const told = [...bottom.slice(0, 2), ...right, say(0, '30.5'), say(1, '12'), end];
    expect(spent(play(build, told))).toEqual(['tile:bottom:2']);
  });

  it('takes zeros at the ends of a number, and no other number', () => {
    expect(spent(play(build, [...bottom, ...right, say(0, '030.50'), say(1, '12'), end]))).toEqual(
      [],
    );
    expect(spent(play(build, [...bottom, ...right, say(0, '3.05'), say(1, '12'), end]))).toEqual([
      'prompt:0',
    ]);
  });
});

describe('the open mat', () => {
  it('without numbers has nothing to judge', () => {
    const work = play({ stage: 'open' }, [
      { do: 'layBars', square: [0, 0], kind: 7, count: 6 },
      { do: 'count', square: [0, 0], total: 41 },
      { do: 'check' },
    ]);
    expect([work.steps, work.lifted]).toEqual([[], []]);
  });

  it('with numbers answers only when it is checked', () => {
    const open = {
      stage: 'open',
      multiplicand: '7',
      multiplier: '6',
      policy: { control: 'eachStep' },
    };
    const wrong = { do: 'layTile', edge: 'bottom', index: 0, digit: 5 };
    expect(play(open, [wrong, { do: 'finish', what: 'row:0' }]).lifted).toEqual([]);
    expect(play(open, [wrong, { do: 'check' }]).lifted).toHaveLength(1);
  });
});

describe('facts', () => {
  const facts = { stage: 'facts', multiplicand: '7', multiplier: '6' };
  const tiles = [
    { do: 'layTile', edge: 'bottom', index: 0, digit: 7 },
    { do: 'layTile', edge: 'right', index: 0, digit: 6 },
  ];
  const bar = (square: number[], kind: number, count = 1) => ({
    do: 'layBars',
    square,
    kind,
    count,
    of: [0, 0],
  });
  const done = (...laid: object[]) =>
    finished(play(facts, [...tiles, ...laid, { do: 'finish', what: 'row:0' }]));

  it('may lie as units here and tens to the left, or whole on their own square', () => {
    expect(spent(done(bar([0, 0], 2), bar([0, 1], 4)))).toEqual([]);
    expect(spent(done(bar([0, 0], 7, 6)))).toEqual([]);
  });

  it.each([
    ['a wrong value spends the fact', [bar([0, 0], 3), bar([0, 1], 4)], ['fact:0:0']],
    ['swapped places spend the place', [bar([0, 0], 4), bar([0, 1], 2)], ['where:0:0']],
    ['a digit on a wrong square spends the place', [bar([0, 0], 2), bar([0, 2], 4)], ['where:0:0']],
    ['both digits on one square spend the place', [bar([0, 0], 2), bar([0, 0], 4)], ['where:0:0']],
    ['a digit left out spends the fact', [bar([0, 0], 2)], ['fact:0:0']],
  ])('%s, and nothing else', (_, laid, steps) => {
    const work = play(facts, [...tiles, ...laid, { do: 'finish', what: 'product' }]);
    expect(spent(work).filter((id) => /^(fact|where)/.test(id))).toEqual(steps);
  });

  it('in any order of work earn full marks', () => {
    for (let seed = 1; seed <= 400; seed += 1) {
      const chance = chanceOf(seed);
      const problem = problemOf({
        stage: 'facts',
        multiplicand: randomNumber(chance, 1 + chance.below(4)),
        multiplier: randomNumber(chance, 1 + chance.below(3)),
      });
      const { multiplicand, multiplier, mat } = problem;
      const given = { across: multiplicand.digits, up: multiplier.digits, ...mat };
      const told = new Worker(given, { ...randomHabits(chance), knows: true }, chance).work();
      const work = replay(problem, actionsOf(told));
      expect([isFull(work), work.complete], `seed ${seed}`).toEqual([true, true]);
    }
  });
});

describe('bars by known facts', () => {
  const tiles = [
    { do: 'layTile', edge: 'bottom', index: 0, digit: 7 },
    { do: 'layTile', edge: 'right', index: 0, digit: 6 },
  ];
  const units = { do: 'layBars', square: [0, 0], kind: 2, count: 1, of: [0, 0] };
  const tens = { do: 'layBars', square: [0, 1], kind: 4, count: 1, of: [0, 0] };

  it('may lie on two squares where the policy says so', () => {
    const allowed = play({ multiplicand: '7', multiplier: '6', policy: { laying: 'fact' } }, [
      ...tiles,
      tens,
      units,
    ]);
    expect(statusOf(allowed, 'laid:0:0')).toBe('first');
    expect(spent(finished(allowed))).toEqual([]);
  });

  it('are two wrong squares where it does not', () => {
    const told = [...tiles, tens, units, { do: 'finish', what: 'product' }];
    expect(statusOf(play({ multiplicand: '7', multiplier: '6' }, told), 'laid:0:0')).toBe(
      'notRight',
    );
  });
});
