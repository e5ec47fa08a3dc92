import { describe, expect, it } from 'vitest';
import { CONTROLS, replay } from '../../engine/index.ts';
import { chanceOf } from '../oracle/chance.ts';
import { randomHabits } from '../oracle/habits.ts';
import { SLIPS } from '../oracle/slips.ts';
import { Worker } from '../oracle/worker.ts';
import { actionsOf, isFull, problemOf } from './play.ts';
import { randomNumber } from './random.ts';
import { APART_PAIRS, type BarStage, expectSpent } from './slipping.ts';

const ORDERS = 300;
const CASES = 24;

/** With one row nothing has to slide. */
const NOT_ALONE = ['missing slide', 'slid off the diagonal'];

const slipsAt = (stage: BarStage, names: readonly string[]) =>
  stage === 'bars1' ? names.filter((name) => !NOT_ALONE.includes(name)) : names;

describe.each(['bars1', 'open'] as const)('at %s', (stage) => {
  it('any order of work earns full marks', () => {
    for (let seed = 1; seed <= ORDERS; seed += 1) {
      const chance = chanceOf(seed);
      const problem = problemOf({
        stage,
        multiplicand: randomNumber(chance, 1 + chance.below(5)),
        multiplier: stage === 'bars1' ? `${chance.below(10)}` : randomNumber(chance, 2),
        policy: { control: chance.pick(CONTROLS) },
      });
      const { multiplicand, multiplier, mat } = problem;
      const given = { across: multiplicand.digits, up: multiplier.digits, ...mat };
      const told = new Worker(given, { ...randomHabits(chance), dawdles: false }, chance).work();
      const work = replay(problem, actionsOf(told));
      expect([isFull(work), work.complete], `seed ${seed}`).toEqual([true, true]);
    }
  });

  it.each(slipsAt(stage, Object.keys(SLIPS)))('one slip costs one step: %s', (name) =>
    expectSpent(stage, () => [name], 1, CASES),
  );

  it.each(APART_PAIRS)('two slips on different steps cost two: %s and %s', (some, others) => {
    const [ones, twos] = [slipsAt(stage, some), slipsAt(stage, others)];
    const names = (seed: number) => [ones[seed % ones.length]!, twos[seed % twos.length]!];
    expectSpent(stage, names, 2, CASES / 3);
  });
});
