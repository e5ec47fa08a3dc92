import { describe, expect, it } from 'vitest';
import { CONTROLS, type Control, replay, type Work } from '../../engine/index.ts';
import { type CellsHabits, CellsPupil, randomCellsHabits } from '../oracle/cells-pupil.ts';
import { CELLS_SLIPS, togetherInCells } from '../oracle/cells-slips.ts';
import { type Chance, chanceOf } from '../oracle/chance.ts';
import { randomPaperHabits } from '../oracle/paper-pupil.ts';
import { actionsOf, isFull, isHardlyWorked, play, problemOf, spent, statusOf } from './play.ts';
import { randomNumber } from './random.ts';

const ORDERS = 150;
const CASES = 20;

const PAIR_CASES = 6;
/** Slips that can never fall on the same step, nor hide one another. */
const APART: readonly (readonly string[])[] = [
  [
    'wrong digit of a fact',
    'missing digit of a fact',
    'fact misremembered',
    'units and tens in each other’s place',
  ],
  [
    'wrong digit of the sum',
    'missing digit of the sum',
    'wrong carry of the sum',
    'column added wrong',
  ],
  ['wrong point'],
];
const PAIRS = APART.flatMap((group, index) =>
  APART.slice(index + 1).flatMap((others) =>
    group.flatMap((one) => others.map((other): [string, string] => [one, other])),
  ),
);

interface Case {
  readonly label: () => string;
  readonly work: Work;
  readonly slipped: boolean;
}

/** Until a row shows which way its slots are used, an answer at each step may have to guess what a wrong digit was. */
function waysFor(control: Control, names: readonly string[], chance: Chance): CellsHabits {
  const ways = randomCellsHabits(chance);
  return control === 'eachStep' && names.length > 0 ? { ...ways, swapped: [] } : ways;
}

/** A pupil who works right by the own mat and paper, in any order, but for the slip. */
function pupil(seed: number, names: readonly string[], least = 1): Case {
  const chance = chanceOf(seed);
  const problem = problemOf({
    stage: 'cells',
    multiplicand: randomNumber(chance, least + chance.below(3)),
    multiplier: randomNumber(chance, least + chance.below(2)),
    policy: { control: chance.pick(CONTROLS) },
  });
  const { multiplicand, multiplier, mat } = problem;
  const given = { across: multiplicand.digits, up: multiplier.digits, ...mat };
  const planned = names.map((name) => CELLS_SLIPS[name]!(chance));
  const habits = randomPaperHabits(chance);
  const ways = waysFor(problem.policy.control, names, chance);
  const told = new CellsPupil(given, habits, ways, chance, togetherInCells(planned)).work();
  const actions = actionsOf(told);
  const work = replay(problem, actions);
  const label = () =>
    `seed ${seed}: ${multiplicand.text} × ${multiplier.text} ${problem.policy.control} ${planned.map(({ happened }) => happened())} spent ${spent(work)}\n${JSON.stringify([habits, ways])}\n${told.map((each) => JSON.stringify(each)).join('\n')}`;
  const slipped = planned.every(({ happened }) => happened() !== null);
  return { label, work, slipped: slipped && !isHardlyWorked(problem, actions) };
}

describe('facts on the squares', () => {
  it('in any order, slots and layout earn full marks', () => {
    for (let seed = 1; seed <= ORDERS; seed += 1) {
      const { work, label } = pupil(seed, []);
      if (!isFull(work) || !work.complete) expect.fail(label());
      expect(work.log.some(({ refused }) => refused !== undefined)).toBe(false);
    }
  });

  it.each(Object.keys(CELLS_SLIPS))('cost one step for one slip: %s', (name) => {
    let cases = 0;
    for (let seed = 1; cases < CASES && seed < 60 * CASES; seed += 1) {
      const found = pupil(seed * 43 + name.length, [name]);
      if (!found.slipped) continue;
      cases += 1;
      if (spent(found.work).length !== 1) expect.fail(found.label());
    }
    expect(cases).toBe(CASES);
  });

  it.each(PAIRS)('cost two steps for two slips: %s, %s', (one, other) => {
    let cases = 0;
    for (let seed = 1; cases < PAIR_CASES && seed < 200 * PAIR_CASES; seed += 1) {
      const found = pupil(seed * 53 + one.length * other.length, [one, other], 2);
      if (!found.slipped) continue;
      cases += 1;
      if (spent(found.work).length !== 2) expect.fail(found.label());
    }
    expect(cases).toBe(PAIR_CASES);
  });

  const TILES = [
    { do: 'layTile', edge: 'bottom', index: 0, digit: 7 },
    { do: 'layTile', edge: 'bottom', index: 1, digit: 3 },
    { do: 'layTile', edge: 'right', index: 0, digit: 6 },
  ];
  const square = (column: number, slot: string, digit: number, of?: number[]) => ({
    do: 'write',
    square: [0, column],
    slot,
    digit,
    ...(of === undefined ? {} : { of }),
  });
  const on = (...told: object[]) =>
    play({ stage: 'cells', multiplicand: '37', multiplier: '6' }, [
      ...TILES,
      ...told,
      { do: 'finish', what: 'row:0' },
    ]);
  const RIGHT = [
    square(0, 'own', 2),
    square(1, 'fromRight', 4),
    square(1, 'own', 8),
    square(2, 'fromRight', 1),
  ];

  it('spend the fact for a wrong value and the place for swapped places', () => {
    const wrong = on(square(0, 'own', 2), square(1, 'fromRight', 5), ...RIGHT.slice(2));
    expect(statusOf(wrong, 'fact:0:0')).toBe('notRight');
    expect(statusOf(wrong, 'where:0:0')).toBe('first');
    const turned = on(square(0, 'own', 4), square(1, 'fromRight', 2), ...RIGHT.slice(2));
    expect(statusOf(turned, 'fact:0:0')).toBe('first');
    expect(statusOf(turned, 'where:0:0')).toBe('notRight');
  });

  it('spend the place for a right digit on a wrong square, named or not', () => {
    for (const of of [undefined, [0, 1]]) {
      const far = on(...RIGHT.slice(0, 3), square(3, 'fromRight', 1, of));
      expect(statusOf(far, 'fact:0:1'), `${of}`).toBe('first');
      expect(statusOf(far, 'where:0:1'), `${of}`).toBe('notRight');
    }
  });

  it('may use the slots the other way round for a whole row, not for a part of it', () => {
    const other = { own: 'fromRight', fromRight: 'own' } as Record<string, string>;
    const swap = (each: (typeof RIGHT)[number]) => ({ ...each, slot: other[each.slot] });
    expect(on(...RIGHT.map(swap)).steps.filter(({ id }) => /^(fact|where)/.test(id))).toSatisfy(
      (steps: Work['steps']) => steps.every(({ status }) => status === 'first'),
    );
    const mixed = on(...RIGHT.slice(0, 2), swap(RIGHT[2]!), swap(RIGHT[3]!));
    expect(spent(mixed).filter((id) => /^(fact|where)/.test(id)).length).toBeGreaterThan(0);
  });

  it('stay with the step that an answer has charged until they are mended', () => {
    const work = on(square(0, 'own', 3), square(1, 'fromRight', 4), ...RIGHT.slice(2));
    expect(work.lifted.map(({ step }) => step)).toEqual(['fact:0:0']);
    const mended = on(square(0, 'own', 3), ...RIGHT.slice(1), { do: 'check' }, square(0, 'own', 2));
    expect(statusOf(mended, 'fact:0:0')).toBe('corrected');
  });
});

describe('a sum with decimals', () => {
  const fact = (square: readonly [number, number], slot: string, digit: number, of = square) => ({
    do: 'write',
    square,
    slot,
    digit,
    of,
  });
  /** Digits and carries of the sum by place from the lowest; a wrong one is charged to a step while the sum has gaps. */
  const told = (lowest: number) => [
    fact([0, 0], 'own', 8),
    fact([1, 0], 'own', 4),
    fact([3, 1], 'fromRight', 1, [3, 0]),
    fact([3, 1], 'own', 0),
    fact([3, 2], 'fromRight', 3, [3, 1]),
    ...[0, 1, 2, 3, 4].map((row) => ({ do: 'finish', what: `row:${row}` })),
    { do: 'write', line: 'product', place: lowest + 1, digit: 0 },
    { do: 'write', line: 'product', place: lowest + 2, digit: 6 },
    { do: 'write', line: 'carry:product', place: lowest + 5, digit: 2 },
    { do: 'write', line: 'product', place: lowest + 5, digit: 4 },
    { do: 'write', line: 'product', place: lowest + 8, digit: 1 },
    { do: 'finish', what: 'product' },
  ];
  const statuses = (multiplicand: string, lowest: number) =>
    play(
      { stage: 'cells', multiplicand, multiplier: '86429', policy: { control: 'eachStep' } },
      told(lowest),
    )
      .steps.filter(({ skill }) => skill !== 'point')
      .map(({ status }) => status);

  it('is charged for the same steps as the sum of the same digits without', () => {
    expect(statuses('1.752', -3)).toEqual(statuses('1752', 0));
  });
});
