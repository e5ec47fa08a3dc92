import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { constraintsOf } from '../../engine/problems/constraints.ts';
import { countProblems, parseSpecification } from '../../engine/problems/index.ts';
import { drawableFrom } from '../../engine/problems/make.ts';
import { countByLooking, type Wanted } from '../oracle/problems-to-order.ts';
import { smallSpecifications } from './specifications.ts';

function clausesOf(wanted: Wanted) {
  const parsed = parseSpecification(wanted);
  if (!parsed.ok) throw new Error(`refused ${JSON.stringify(parsed.fault)}`);
  return parsed.value;
}

/** The engine's count, 0 included; the conflict that a count of 0 leads to has its own tests. */
function counted(wanted: Wanted): number {
  const { population, points } = drawableFrom(constraintsOf(clausesOf(wanted).clauses));
  return population.count * points.length;
}

const faultOf = (wanted: Wanted) => {
  const parsed = parseSpecification(wanted);
  const count = parsed.ok ? countProblems(parsed.value) : parsed;
  return count.ok ? null : count.fault;
};

describe('how many problems there are', () => {
  it('is what looking at every pair finds, for 520 small specifications', {
    timeout: 240_000,
  }, () => {
    const specifications = fc.sample(smallSpecifications, { numRuns: 520, seed: 20 });
    let possible = 0;
    for (const { wanted, longest } of specifications) {
      const byLooking = countByLooking(wanted, longest);
      expect(counted(wanted), JSON.stringify(wanted)).toBe(byLooking);
      if (byLooking > 0) possible += 1;
    }
    expect(possible).toBeGreaterThan(250);
  });

  it('is every pair of six by three digits when nothing else is asked', () => {
    const size = { multiplicand: { digits: 6 }, multiplier: { digits: 3 } };
    expect(counted(size)).toBe(900_000 * 900);
    // Rows of 1 to 9 all exchange at most six times; this condition says nothing and is counted.
    expect(counted({ ...size, exchanges: { from: 0, to: 6 } })).toBe(900_000 * 900);
  });

  it('splits six by three digits by the length of the product', () => {
    const size = { multiplicand: { digits: 6 }, multiplier: { digits: 3 } };
    let short = 0;
    for (let b = 100; b < 1000; b++) short += Math.ceil(10 ** 8 / b) - 10 ** 5;
    expect(counted({ ...size, product: { digits: 8 } })).toBe(short);
    expect(counted({ ...size, product: { digits: 9 } })).toBe(900_000 * 900 - short);
  });

  // Both counted once by plain loops over all 810,000,000 pairs of six by three digits.
  it.each<[number, Omit<Wanted, 'multiplicand' | 'multiplier'>, 'some' | undefined]>([
    [
      343_375,
      {
        exchanges: [{ from: 1, to: 3 }, { from: 2, to: 4 }, { to: 2 }],
        largestPile: { from: 30, to: 80 },
        facts: { required: [1, 2, 3, 4, 5] },
        product: { digits: 8 },
      },
      'some',
    ],
    [
      629_502,
      {
        exchanges: 4,
        largestPile: { from: 40, to: 70 },
        facts: { required: [[6, 7], 8, 9], avoided: [[5, 5]] },
      },
      undefined,
    ],
  ])('is %i among the largest numbers for many conditions at once', (count, conditions, zeros) => {
    const multiplicand = { digits: 6, ...(zeros && { zeros }) };
    expect(counted({ ...conditions, multiplicand, multiplier: { digits: 3 } })).toBe(count);
  });

  it('adds up over the exchanges of one row', () => {
    const size = { multiplicand: { digits: 6 }, multiplier: { digits: 3 } };
    const free = { from: 0 };
    const parts = [0, 1, 2, 3, 4, 5, 6].map((times) =>
      counted({ ...size, exchanges: [free, times, free] }),
    );
    expect(parts.reduce((sum, part) => sum + part)).toBe(900_000 * 900);
  });

  it('is exact for the largest numbers when only sizes, zeros and the product are asked', () => {
    const size = { multiplicand: { digits: 7 }, multiplier: { digits: 6 } };
    expect(counted(size)).toBe(9e6 * 9e5);
    const withoutZeros = {
      multiplicand: { digits: 7, zeros: 'none' as const },
      multiplier: { digits: 6, zeros: 'none' as const },
    };
    expect(counted(withoutZeros)).toBe(9 ** 13);
    const decimals = { ...size, multiplicand: { digits: 7, decimals: { to: 3 } } };
    expect(counted(decimals)).toBe(4 * 9e6 * 9e5);
  });

  it('is refused with the limit when larger numbers are tied together', () => {
    const limit = { multiplicand: 6, multiplier: 3 };
    expect(
      faultOf({ multiplicand: { digits: 7 }, multiplier: { digits: 2 }, exchanges: 2 }),
    ).toEqual({ code: 'tooLarge', at: 'multiplicand.digits', limit, because: ['exchanges'] });
    expect(faultOf({ multiplicand: { digits: 4 }, facts: { required: [[6, 7], 8] } })).toEqual({
      code: 'tooLarge',
      at: 'multiplier.digits',
      limit,
      because: ['facts.required[0]', 'facts.required[1]'],
    });
  });
});
