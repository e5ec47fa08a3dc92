import { describe, expect, it } from 'vitest';
import { CONTROLS, type Control, replay, type Work } from '../../engine/index.ts';
import { chanceOf } from '../oracle/chance.ts';
import { PaperPupil, randomPaperHabits } from '../oracle/paper-pupil.ts';
import { PAPER_SLIPS, together } from '../oracle/paper-slips.ts';
import { actionsOf, problemOf, spent } from './play.ts';
import { randomNumber } from './random.ts';

const CASES = 30;
const PAIR_CASES = 6;

interface Case {
  readonly label: () => string;
  readonly work: Work;
}

/** A pupil who slips as told and does everything else right for what stands on the own paper; null: no slip. */
function slipping(
  seed: number,
  names: readonly string[],
  { least, controls }: { least: number; controls: readonly Control[] } = {
    least: 1,
    controls: CONTROLS,
  },
): Case | null {
  const chance = chanceOf(seed);
  const problem = problemOf({
    stage: 'paper',
    multiplicand: randomNumber(chance, least + chance.below(4)),
    multiplier: randomNumber(chance, 1 + chance.below(4)),
    policy: { control: chance.pick(controls) },
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

const GROUPS: readonly (readonly string[])[] = [
  ['wrong digit of a row', 'missing digit of a row', 'wrong carry of a row', 'fact misremembered'],
  ['wrong placeholder', 'placeholder forgotten', 'placeholder too many'],
  [
    'wrong digit of the sum',
    'missing digit of the sum',
    'wrong carry of the sum',
    'column added wrong',
  ],
  ['wrong point'],
  ['digit in a zero row'],
];

/** Pairs of different kinds, in lines long enough that no other shift explains both: neighbours may cover each other. */
const PAIRS = GROUPS.flatMap((group, index) =>
  GROUPS.slice(index + 1).flatMap((others) =>
    group.flatMap((one) => others.map((other): [string, string] => [one, other])),
  ),
);

/** Of two slips in one unfinished row an answer at each step may have to guess which they are. */
function controlsFor(one: string, other: string): readonly Control[] {
  const sameRow = GROUPS[0]!.includes(one) && GROUPS[1]!.includes(other);
  return sameRow ? ['checkpoint', 'end', 'silent'] : CONTROLS;
}

describe('two slips on paper cost two steps', () => {
  it.each(PAIRS)('%s, %s', (one, other) => {
    let cases = 0;
    const controls = controlsFor(one, other);
    for (let seed = 1; cases < PAIR_CASES && seed < 200 * PAIR_CASES; seed += 1) {
      const found = slipping(seed * 41 + one.length * other.length, [one, other], {
        least: 3,
        controls,
      });
      if (found === null) continue;
      cases += 1;
      if (spent(found.work).length !== 2) expect.fail(found.label());
    }
    expect(cases).toBe(PAIR_CASES);
  });
});
