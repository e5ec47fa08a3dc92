import { describe, expect, it } from 'vitest';
import { CONTROLS, replay, score } from '../../engine/index.ts';
import { type Chance, chanceOf } from '../oracle/chance.ts';
import { PaperPupil, randomPaperHabits } from '../oracle/paper-pupil.ts';
import { actionsOf, problemOf } from './play.ts';
import { randomNumber } from './random.ts';

const CASES = 250;

function randomProblem(chance: Chance) {
  return problemOf({
    stage: 'paper',
    multiplicand: randomNumber(chance, 1 + chance.below(5)),
    multiplier: randomNumber(chance, 1 + chance.below(4)),
    policy: { control: chance.pick(CONTROLS) },
  });
}

describe('the written algorithm in any layout', () => {
  it('earns full marks', () => {
    for (let seed = 1; seed <= CASES; seed += 1) {
      const chance = chanceOf(seed);
      const problem = randomProblem(chance);
      const { multiplicand, multiplier, mat } = problem;
      const given = { across: multiplicand.digits, up: multiplier.digits, ...mat };
      const habits = randomPaperHabits(chance);
      const told = new PaperPupil(given, habits, chance).work();
      const work = replay(problem, actionsOf(told));
      const label = `seed ${seed}: ${multiplicand.text} × ${multiplier.text} ${problem.policy.control} ${JSON.stringify(habits)} ${JSON.stringify(told)}`;
      expect(
        work.log.filter(({ refused }) => refused !== undefined),
        label,
      ).toEqual([]);
      const bad = work.steps.filter(({ status }) => status !== 'first');
      expect(
        bad.map(({ id, status }) => `${id} ${status}`),
        label,
      ).toEqual([]);
      const { fraction } = score([work]);
      expect([fraction.num, fraction.den, work.complete], label).toEqual([1n, 1n, true]);
    }
  });
});
