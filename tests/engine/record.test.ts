import { describe, expect, it } from 'vitest';
import { type Action, CONTROLS, EDGES, replay, type Work } from '../../engine/index.ts';
import { chanceOf } from '../oracle/chance.ts';
import { randomHabits } from '../oracle/habits.ts';
import { SLIPS, type Slipping, slipOnce, togetherAtBars } from '../oracle/slips.ts';
import { Worker } from '../oracle/worker.ts';
import { actionsOf, isFull, isHardlyWorked, play, problemOf, spent, statusOf } from './play.ts';
import { randomNumber } from './random.ts';

const ORDERS = 150;
const CASES = 20;

interface Case {
  readonly label: () => string;
  readonly work: Work;
}

/** A child who records each row from the own mat, in any order, but for the slips; null: they never came. */
function recording(seed: number, names: readonly string[]): Case | null {
  const chance = chanceOf(seed);
  const problem = problemOf({
    stage: 'record',
    multiplicand: randomNumber(chance, 1 + chance.below(4)),
    multiplier: randomNumber(chance, 1 + chance.below(3)),
    policy: { control: chance.pick(CONTROLS) },
  });
  const { multiplicand, multiplier, mat } = problem;
  const slips: Slipping[] = names.map((name) => slipOnce(name, chance));
  const dawdles = problem.policy.control !== 'eachStep' && chance.maybe(0.2);
  const worker = new Worker(
    { across: multiplicand.digits, up: multiplier.digits, ...mat },
    { ...randomHabits(chance), dawdles, records: true },
    chance,
    togetherAtBars(slips),
  );
  const told = worker.work();
  const healed = names.includes('missing slide') && !worker.leftAbove();
  if (healed || slips.some((slip) => slip.happened() === null)) return null;
  const actions = actionsOf(told);
  // A number without its only digit asks for nothing: that is work not begun.
  const begun = asksForBars(actions) && !isHardlyWorked(problem, actions);
  if (names.length > 0 && (!begun || mayCancel(slips))) return null;
  const work = replay(problem, actions);
  const label = () =>
    `seed ${seed}: ${multiplicand.text} × ${multiplier.text} ${problem.policy.control} ${JSON.stringify(slips.map((slip) => slip.happened()))} spent ${spent(work)}\n${told.map((each) => JSON.stringify(each)).join('\n')}`;
  return { label, work };
}

function asksForBars(actions: readonly Action[]): boolean {
  return EDGES.every((edge) =>
    actions.some((each) => each.do === 'layTile' && each.edge === edge && each.digit > 0),
  );
}

/** Two slips with bars of one place may make up for each other. */
function mayCancel(slips: readonly Slipping[]): boolean {
  const places = slips.flatMap((slip) => {
    const { meant } = slip.happened()!;
    const square = (meant['square'] ?? meant['to']) as [number, number] | undefined;
    return square === undefined ? [] : [square[0] + square[1]];
  });
  return new Set(places).size < places.length;
}

const KINDS = Object.keys(SLIPS).filter(
  (name) => name !== 'wrong saying' && name !== 'extra product digit',
);

const PAIR_CASES = 8;
/** Slips that can never fall on the same step, nor hide one another. */
const APART: readonly (readonly string[])[] = [
  ['wrong tile', 'missing tile'],
  ['wrong count of bars', 'missing square', 'bars laid twice'],
  ['wrong count', 'wrong number of ones'],
  ['wrong product digit'],
];
const PAIRS = APART.flatMap((group, index) =>
  APART.slice(index + 1).flatMap((others) =>
    group.flatMap((one) => others.map((other): [string, string] => [one, other])),
  ),
);

describe('partial products written from the mat', () => {
  it('earn full marks in any order, from either side, with or without placeholders', () => {
    for (let seed = 1; seed <= ORDERS; seed += 1) {
      const { work, label } = recording(seed, [])!;
      if (!isFull(work) || !work.complete) expect.fail(label());
      expect(work.log.some(({ refused }) => refused !== undefined)).toBe(false);
    }
  });

  it.each(KINDS)('cost one step for one slip: %s', (name) => {
    let cases = 0;
    for (let seed = 1; cases < CASES && seed < 100 * CASES; seed += 1) {
      const found = recording(seed * 47 + name.length, [name]);
      if (found === null) continue;
      cases += 1;
      if (spent(found.work).length !== 1) expect.fail(found.label());
    }
    expect(cases).toBe(CASES);
  });

  it.each(PAIRS)('cost two steps for two slips: %s, %s', (one, other) => {
    let cases = 0;
    for (let seed = 1; cases < PAIR_CASES && seed < 300 * PAIR_CASES; seed += 1) {
      const found = recording(seed * 59 + one.length * other.length, [one, other]);
      if (found === null) continue;
      cases += 1;
      if (spent(found.work).length !== 2) expect.fail(found.label());
    }
    expect(cases).toBe(PAIR_CASES);
  });

  const MAT = [
    { do: 'layTile', edge: 'bottom', index: 0, digit: 3 },
    { do: 'layTile', edge: 'bottom', index: 1, digit: 1 },
    { do: 'layTile', edge: 'right', index: 0, digit: 2 },
    { do: 'layTile', edge: 'right', index: 1, digit: 3 },
    { do: 'layBars', square: [0, 0], kind: 3, count: 2 },
    { do: 'layBars', square: [0, 1], kind: 1, count: 2 },
    { do: 'layBars', square: [1, 0], kind: 3, count: 3 },
    { do: 'layBars', square: [1, 1], kind: 1, count: 3 },
  ];
  const line = (row: number, ...digits: number[]) => [
    { do: 'begin', line: `partial:${row}`, row },
    ...digits.map((digit, place) => ({ do: 'write', line: `partial:${row}`, place, digit })),
  ];
  const on = (...told: object[]) =>
    play({ stage: 'record', multiplicand: '13', multiplier: '32' }, [...MAT, ...told]);
  const FINISH = { do: 'finish', what: 'row:1' };

  it('lose one placeholder where it is forgotten and where there is one too many', () => {
    for (const digits of [
      [9, 3],
      [0, 0, 9, 3],
    ]) {
      const work = on(...line(0, 6, 2), ...line(1, ...digits), FINISH);
      expect(work.lifted.map(({ step }) => step)).toEqual(['zero:1:0']);
      expect(statusOf(work, 'row:1:1')).toBe('first');
      expect(statusOf(work, 'row:1:2')).toBe('first');
    }
  });

  it('are judged once the row lies on the mat, by what lies there', () => {
    const early = play({ stage: 'record', multiplicand: '13', multiplier: '32' }, [
      ...MAT.slice(0, 4),
      ...line(0, 6, 2),
    ]);
    expect(early.judgements.at(-1)?.verdict).toBe('neutral');
    const less = on({ do: 'liftBars', square: [0, 1], kind: 1, count: 1 }, ...line(0, 6, 1));
    expect(statusOf(less, 'row:0:1')).toBe('follows');
    const wrong = on(...line(0, 6, 3), { do: 'finish', what: 'row:0' });
    expect(wrong.lifted).toEqual([{ step: 'row:0:1', line: { line: 'partial:0', place: 1 } }]);
  });

  it('are held against the mat as it lay when they were written, a square left out or not', () => {
    const work = play({ stage: 'record', multiplicand: '17', multiplier: '32' }, [
      { do: 'layTile', edge: 'bottom', index: 0, digit: 7 },
      { do: 'layTile', edge: 'bottom', index: 1, digit: 1 },
      { do: 'layTile', edge: 'right', index: 0, digit: 2 },
      { do: 'layTile', edge: 'right', index: 1, digit: 3 },
      { do: 'layBars', square: [0, 0], kind: 7, count: 2 },
      { do: 'layBars', square: [0, 1], kind: 1, count: 2 },
      { do: 'layBars', square: [1, 0], kind: 7, count: 3 },
      { do: 'count', square: [1, 0], total: 21 },
      { do: 'begin', line: 'partial:0', row: 1 },
      { do: 'write', line: 'partial:0', place: 1, digit: 1 },
      { do: 'write', line: 'partial:0', place: 2, digit: 2 },
      { do: 'exchange', from: [1, 0], tens: 2, to: [1, 1], ones: 5 },
      { do: 'finish', what: 'problem' },
    ]);
    expect(statusOf(work, 'laid:1:1')).toBe('notRight');
    expect(statusOf(work, 'settled:1')).toBe('notRight');
    expect(['row:1:1', 'row:1:2'].map((id) => statusOf(work, id))).toEqual(['first', 'follows']);
  });

  it('stay right when the mat slips later', () => {
    const work = on(...line(0, 6, 2), { do: 'slide', from: [0, 0], to: [0, 2] });
    expect(statusOf(work, 'row:0:0')).toBe('first');
  });

  it('have nothing to say of a row from which more was lifted than it has: it may stay empty', () => {
    const slipped = [
      { do: 'layTile', edge: 'bottom', index: 2, digit: 1 },
      { do: 'layTile', edge: 'right', index: 0, digit: 9 },
      { do: 'layBars', square: [2, 2], kind: 1, count: 8 },
      { do: 'count', square: [2, 2], total: 8 },
      { do: 'slide', from: [2, 2], to: [0, 4] },
      { do: 'liftBars', square: [0, 4], kind: 8, count: 1 },
    ];
    const written = [
      { do: 'begin', line: 'partial:0', row: 0 },
      { do: 'write', line: 'partial:0', place: 2, digit: 9 },
      { do: 'finish', what: 'problem' },
    ];
    const problem = { stage: 'record', multiplicand: '100', multiplier: '809' };
    expect(statusOf(play(problem, slipped), 'row:0:2')).toBe('open');
    expect(statusOf(play(problem, [...slipped, ...written]), 'row:0:2')).toBe('notRight');
  });
});
