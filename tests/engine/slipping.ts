import { expect } from 'vitest';
import { CONTROLS, type Problem, replay, type Work } from '../../engine/index.ts';
import { type Chance, chanceOf } from '../oracle/chance.ts';
import { randomHabits } from '../oracle/habits.ts';
import { type Slipping, slipOnce, togetherAtBars } from '../oracle/slips.ts';
import { Worker } from '../oracle/worker.ts';
import { actionsOf, isHardlyWorked, problemOf, spent } from './play.ts';
import { randomNumber } from './random.ts';

export type BarStage = 'bars1' | 'bars' | 'facts' | 'open';

function randomProblem(chance: Chance, stage: BarStage): Problem {
  return problemOf({
    stage,
    multiplicand: randomNumber(chance, 1 + chance.below(4)),
    multiplier:
      stage === 'bars1' ? `${chance.below(10)}` : randomNumber(chance, 1 + chance.below(3)),
    policy: { control: chance.pick(CONTROLS) },
  });
}

interface Case {
  readonly label: string;
  readonly work: Work;
}

/** A child who slips as told and does everything right for what then lies on the own mat; null: never slipped. */
function slipping(stage: BarStage, seed: number, names: readonly string[]): Case | null {
  const chance = chanceOf(seed);
  const problem = randomProblem(chance, stage);
  const { multiplicand, multiplier, mat } = problem;
  const slips: Slipping[] = names.map((name) => slipOnce(name, chance));
  const dawdles = problem.policy.control !== 'eachStep' && chance.maybe(0.2);
  const worker = new Worker(
    { across: multiplicand.digits, up: multiplier.digits, ...mat },
    { ...randomHabits(chance), dawdles, knows: stage === 'facts' },
    chance,
    togetherAtBars(slips),
  );
  const told = worker.work();
  const healed = names.includes('missing slide') && !worker.leftAbove();
  if (healed || slips.some((slip) => slip.happened() === null)) return null;
  const actions = actionsOf(told);
  if (isHardlyWorked(problem, actions)) return null;
  const label = `seed ${seed}: ${multiplicand.text} × ${multiplier.text} ${JSON.stringify(slips.map((slip) => slip.happened()))}`;
  return { label, work: replay(problem, actions) };
}

/** Runs until enough children have slipped as told. */
export function expectSpent(
  stage: BarStage,
  names: (seed: number) => readonly string[],
  steps: number,
  cases: number,
): void {
  let found = 0;
  for (let seed = 1; found < cases && seed < 100 * cases; seed += 1) {
    const each = slipping(stage, seed * 31 + steps, names(seed));
    if (each === null) continue;
    found += 1;
    expect(spent(each.work).length, `${each.label} ${spent(each.work)}`).toBe(steps);
  }
  expect(found).toBe(cases);
}

/** Slips that can never fall on the same step, nor hide one another. */
const APART: readonly (readonly string[])[] = [
  ['wrong tile', 'missing tile', 'extra tile'],
  ['wrong kind of bar', 'wrong count of bars', 'missing square', 'bars laid twice'],
  ['wrong number of ones', 'exchanged to a wrong square', 'wrong count', 'slid off the diagonal'],
  ['wrong saying'],
  ['wrong product digit', 'extra product digit'],
];

/** Every two groups, in each of which any slip may stand for the others. */
export const APART_PAIRS = APART.flatMap((some, index) =>
  APART.slice(index + 1).map((others) => [some, others] as const),
);
