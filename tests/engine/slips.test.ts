import { describe, expect, it } from 'vitest';
import { CONTROLS, type Problem, replay, type Work } from '../../engine/index.ts';
import { type Chance, chanceOf } from '../oracle/chance.ts';
import { SLIPS, type Slipping, slipOnce } from '../oracle/slips.ts';
import { randomHabits, Worker } from '../oracle/worker.ts';
import { actionsOf, problemOf, spent } from './play.ts';
import { randomNumber } from './random.ts';

const CASES = 120;

function randomProblem(chance: Chance): Problem {
  return problemOf({
    multiplicand: randomNumber(chance, 1 + chance.below(4)),
    multiplier: randomNumber(chance, 1 + chance.below(3)),
    policy: { control: chance.pick(CONTROLS) },
  });
}

interface Case {
  readonly label: string;
  readonly work: Work;
}

/** A child who slips as told and does everything right for what then lies on the own mat; null: never slipped. */
function slipping(seed: number, names: readonly string[]): Case | null {
  const chance = chanceOf(seed);
  const problem = randomProblem(chance);
  const { multiplicand, multiplier, mat } = problem;
  const slips: Slipping[] = names.map((name) => slipOnce(name, chance));
  const dawdles = problem.policy.control !== 'eachStep' && chance.maybe(0.2);
  const worker = new Worker(
    { across: multiplicand.digits, up: multiplier.digits, ...mat },
    { ...randomHabits(chance), dawdles },
    chance,
    (told, self) =>
      slips.reduce<ReturnType<Slipping['slip']>>(
        (done, each) => done ?? each.slip(told, self),
        null,
      ),
  );
  const told = worker.work();
  const healed = names.includes('missing slide') && !worker.leftAbove();
  if (healed || slips.some((slip) => slip.happened() === null)) return null;
  const label = `seed ${seed}: ${multiplicand.text} × ${multiplier.text} ${JSON.stringify(slips.map((slip) => slip.happened()))}`;
  return { label, work: replay(problem, actionsOf(told)) };
}

describe('one slip costs one step', () => {
  it.each(Object.keys(SLIPS))('%s', (name) => {
    let cases = 0;
    for (let seed = 1; cases < CASES && seed < 20 * CASES; seed += 1) {
      const found = slipping(seed * 31 + name.length, [name]);
      if (found === null) continue;
      cases += 1;
      expect(spent(found.work).length, `${found.label} ${spent(found.work)}`).toBe(1);
    }
    expect(cases).toBe(CASES);
  });
});
