import { Decimal } from 'decimal.js';
import { describe, expect, it } from 'vitest';
import { type Problem, replay, score } from '../../engine/index.ts';
import { matValue } from '../../engine/mat/position.ts';
import { amountOf } from '../../engine/numerals/numeral.ts';
import type { Told } from '../oracle/beads.ts';
import { type Chance, chanceOf } from '../oracle/chance.ts';
import { randomHabits } from '../oracle/habits.ts';
import { Worker } from '../oracle/worker.ts';
import { actionsOf, problemOf } from './play.ts';
import { randomNumber } from './random.ts';

const CASES = 10_000;

function randomProblem(chance: Chance): Problem {
  return problemOf({
    multiplicand: randomNumber(chance, 2 + chance.below(3)),
    multiplier: randomNumber(chance, 1 + chance.below(3)),
  });
}

function readFrom(lines: Readonly<Record<string, number>>): Decimal {
  return Object.entries(lines).reduce(
    (sum, [place, digit]) => sum.plus(new Decimal(10).pow(place).times(digit)),
    new Decimal(0),
  );
}

function topRowFirst(problem: Problem, told: readonly Told[]): boolean {
  const first = told.find((each) => each.do === 'layBars');
  const rows = told
    .filter((each) => each.do === 'layBars')
    .map((each) => (each['square'] as number[])[0]!);
  return (
    problem.multiplier.digits.length > 1 &&
    first !== undefined &&
    rows[0] === Math.max(...rows) &&
    rows[0]! > 0
  );
}

describe('any valid order of work', () => {
  it('earns full marks and the exact product', { timeout: 300_000 }, () => {
    const orders = new Set<string>();
    let slidesFirst = 0;
    let topFirst = 0;
    for (let seed = 1; seed <= CASES; seed += 1) {
      const chance = chanceOf(seed);
      const problem = randomProblem(chance);
      const { multiplicand, multiplier, mat } = problem;
      const given = { across: multiplicand.digits, up: multiplier.digits, ...mat };
      const worker = new Worker(given, randomHabits(chance), chance);
      const told = worker.work();
      const work = replay(problem, actionsOf(told));
      const label = `seed ${seed}: ${multiplicand.text} × ${multiplier.text}`;
      const { fraction } = score([work]);
      expect([fraction.num, fraction.den, work.complete], label).toEqual([1n, 1n, true]);
      const product = amountOf(multiplicand) * amountOf(multiplier);
      expect(matValue(work.position), label).toBe(product);
      expect(worker.beads.total(), label).toBe(product);
      const exact = new Decimal(multiplicand.text).times(multiplier.text);
      expect(readFrom(work.position.paper.lines['product'] ?? {}).equals(exact), label).toBe(true);
      orders.add(`${multiplicand.text}×${multiplier.text} ${JSON.stringify(told)}`);
      const counting = told.findIndex((each) => each.do === 'count' || each.do === 'makeTen');
      const sliding = told.findIndex((each) => each.do === 'slide');
      if (sliding >= 0 && (counting < 0 || sliding < counting)) slidesFirst += 1;
      if (topRowFirst(problem, told)) topFirst += 1;
    }
    expect(orders.size).toBeGreaterThanOrEqual(0.99 * CASES);
    expect(slidesFirst).toBeGreaterThanOrEqual(0.2 * CASES);
    expect(topFirst).toBeGreaterThanOrEqual(0.2 * CASES);
  });
});
