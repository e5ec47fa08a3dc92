import { describe, expect, it } from 'vitest';
import { CONTROLS, replay, type Work } from '../../engine/index.ts';
import { chanceOf } from '../oracle/chance.ts';
import { PaperPupil, randomPaperHabits } from '../oracle/paper-pupil.ts';
import { PAPER_SLIPS, together } from '../oracle/paper-slips.ts';
import { actionsOf, problemOf, spent } from './play.ts';
import { randomNumber } from './random.ts';

const CASES = 1500;

interface Case {
  readonly label: () => string;
  readonly work: Work;
}

/** A pupil who slips as told and does everything else right for what stands on the own paper; null: no slip. */
function slipping(seed: number, names: readonly string[]): Case | null {
  const chance = chanceOf(seed);
  const problem = problemOf({
    stage: 'paper',
    multiplicand: randomNumber(chance, 1 + chance.below(5)),
    multiplier: randomNumber(chance, 1 + chance.below(4)),
    policy: { control: chance.pick(CONTROLS) },
  });
  const { multiplicand, multiplier, mat } = problem;
  const planned = names.map((name) => PAPER_SLIPS[name]!(chance));
  const given = { across: multiplicand.digits, up: multiplier.digits, ...mat };
  const habits = randomPaperHabits(chance);
  const told = new PaperPupil(given, habits, chance, together(planned)).work();
  if (planned.some(({ happened }) => happened() === null)) return null;
  const work = replay(problem, actionsOf(told));
  const label = () =>
    `seed ${seed}: ${multiplicand.text} × ${multiplier.text} ${problem.policy.control} ${planned.map(({ happened }) => happened())} spent ${spent(work)}\n${JSON.stringify(habits)}\n${told.map((each) => JSON.stringify(each)).join('\n')}`;
  return { label, work };
}

describe('one slip on paper costs one step', () => {
  it.each(Object.keys(PAPER_SLIPS))('%s', (name) => {
    let cases = 0;
    for (let seed = 1; cases < CASES && seed < 40 * CASES; seed += 1) {
      const found = slipping(seed * 37 + name.length, [name]);
      if (found === null) continue;
      cases += 1;
      if (spent(found.work).length !== 1) expect.fail(found.label());
    }
    expect(cases).toBe(CASES);
  });
});
