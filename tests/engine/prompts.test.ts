import { describe, expect, it } from 'vitest';
import { CONTROLS, replay } from '../../engine/index.ts';
import { chanceOf } from '../oracle/chance.ts';
import { BUILD_SLIPS, built, walked } from '../oracle/prompt-pupil.ts';
import { actionsOf, isFull, problemOf, spent } from './play.ts';
import { randomNumber } from './random.ts';

const CASES = 200;

function walking(seed: number, wrong: number) {
  const chance = chanceOf(seed);
  const problem = problemOf({
    stage: 'walk',
    seed,
    prompts: 3 + chance.below(7),
    categories: chance.maybe(0.5),
    policy: { control: chance.pick(CONTROLS) },
  });
  const slips = [...problem.prompts.keys()].sort(() => chance.below(3) - 1).slice(0, wrong);
  const told = walked(problem.mat, problem.prompts, slips, chance);
  return { work: replay(problem, actionsOf(told)), slips };
}

describe('a walk over the squares', () => {
  it('earns full marks in any order, with any square of the place', () => {
    for (let seed = 1; seed <= CASES; seed += 1) {
      const { work } = walking(seed, 0);
      expect([isFull(work), work.complete], `seed ${seed}`).toEqual([true, true]);
    }
  });

  it.each([1, 2])('costs a step for each wrong answer: %i', (wrong) => {
    for (let seed = 1; seed <= CASES; seed += 1) {
      const { work, slips } = walking(seed * 17 + wrong, wrong);
      const steps = slips.map((prompt) => `prompt:${prompt}`);
      expect(spent(work).sort(), `seed ${seed}`).toEqual(steps.sort());
    }
  });
});

type Slip = Parameters<typeof built>[2][number];

function building(seed: number, slips: readonly Slip[]) {
  const chance = chanceOf(seed);
  const problem = problemOf({
    stage: 'build',
    multiplicand: randomNumber(chance, 1 + chance.below(4)),
    multiplier: randomNumber(chance, 1 + chance.below(3)),
    policy: { control: chance.pick(CONTROLS) },
  });
  const { multiplicand, multiplier, prompts } = problem;
  const told = built({ bottom: multiplicand, right: multiplier }, prompts, slips, chance);
  const label = `seed ${seed}: ${multiplicand.text}, ${multiplier.text} ${JSON.stringify(told)}`;
  return { work: replay(problem, actionsOf(told)), label };
}

const SLIPS = (['bottom', 'right'] as const).flatMap((edge) =>
  BUILD_SLIPS.map((slip): Slip => ({ slip, edge })),
);
/** Two slips with the tiles of one number may fall on the same tile. */
const PAIRS = SLIPS.flatMap((one, index) =>
  SLIPS.slice(index + 1)
    .filter((other) => other.edge !== one.edge || other.slip === 'wrong reading')
    .map((other): [Slip, Slip] => [one, other]),
);

describe('numbers in tiles', () => {
  it('earn full marks in any order', () => {
    for (let seed = 1; seed <= CASES; seed += 1) {
      const { work, label } = building(seed, []);
      expect([isFull(work), work.complete], label).toEqual([true, true]);
    }
  });

  it.each(SLIPS)('cost one step for one slip: $slip, $edge', (slip) => {
    for (let seed = 1; seed <= CASES / 4; seed += 1) {
      const { work, label } = building(seed * 23, [slip]);
      expect(spent(work).length, label).toBe(1);
    }
  });

  it.each(PAIRS)('cost two steps for two slips: %o, %o', (one, other) => {
    for (let seed = 1; seed <= CASES / 8; seed += 1) {
      const { work, label } = building(seed * 29, [one, other]);
      expect(spent(work).length, label).toBe(2);
    }
  });
});
