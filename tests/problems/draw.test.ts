import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseProblem } from '../../engine/index.ts';
import { constraintsOf } from '../../engine/problems/constraints.ts';
import {
  type MadeProblem,
  makeProblems,
  parseSpecification,
  type WrittenSpecification,
} from '../../engine/problems/index.ts';
import { drawableFrom } from '../../engine/problems/make.ts';
import { distinctBelow, drawsFrom } from '../../engine/problems/random.ts';
import { isWanted, type Wanted } from '../oracle/problems-to-order.ts';
import { chanceOfChiSquare, uniformityOfDraws } from './chi-square.ts';
import { smallSpecifications } from './specifications.ts';

function made(written: WrittenSpecification): readonly MadeProblem[] {
  const parsed = parseSpecification(written);
  const drawn = parsed.ok ? makeProblems(parsed.value) : parsed;
  if (!drawn.ok) throw new Error(JSON.stringify(drawn.fault));
  return drawn.value.problems;
}

function populationOf(written: WrittenSpecification): number {
  const parsed = parseSpecification(written);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
  const { population, points } = drawableFrom(constraintsOf(parsed.value.clauses));
  return population.count * points.length;
}

const laid = (written: string): string => written.replace('.', '').replace(/^0+/, '');
const nameOf = ({ multiplicand, multiplier }: MadeProblem): string =>
  `${multiplicand} × ${multiplier}`;

const SMALL: WrittenSpecification[] = [
  { multiplicand: { digits: 2 }, multiplier: { digits: 1 }, exchanges: 1 },
  { multiplicand: { digits: 2 }, multiplier: { digits: 2 }, facts: { required: [[6, 7]] } },
  {
    multiplicand: { digits: 3, zeros: { inside: true } },
    multiplier: { digits: { from: 1, to: 2 } },
    product: { digits: 4 },
    largestPile: { to: 24 },
  },
  {
    multiplicand: { digits: 2, decimals: { to: 2 } },
    multiplier: { digits: 1, decimals: 1 },
    facts: { avoided: [9, 8, 7] },
  },
];

describe('drawing problems', () => {
  it.each([1, 2, 3, 4, 5])('draws each with equal chance, seed %i', (seed) => {
    for (const written of SMALL) {
      const size = populationOf(written);
      expect(size).toBeGreaterThan(30);
      expect(size).toBeLessThanOrEqual(2000);
      const [draws, each] = [60, Math.ceil(size / 3)];
      const counts = new Map<string, number>();
      for (let draw = 0; draw < draws; draw++) {
        for (const problem of made({ ...written, count: each, seed: 1000 * seed + draw })) {
          counts.set(nameOf(problem), (counts.get(nameOf(problem)) ?? 0) + 1);
        }
      }
      const all = [...counts.values(), ...new Array<number>(size - counts.size).fill(0)];
      expect(uniformityOfDraws(all, draws, each).chance).toBeGreaterThan(0.001);
    }
  });

  it('gives every ordered choice the same chance', () => {
    const draws = drawsFrom(11);
    const counts = new Map<string, number>();
    const [choices, times] = [9 * 8 * 7, 40];
    for (let draw = 0; draw < choices * times; draw++) {
      const choice = distinctBelow(9, 3, draws).join();
      counts.set(choice, (counts.get(choice) ?? 0) + 1);
    }
    expect(counts.size).toBe(choices);
    const chiSquare = [...counts.values()].reduce((sum, n) => sum + (n - times) ** 2 / times, 0);
    expect(chanceOfChiSquare(chiSquare, choices - 1)).toBeGreaterThan(0.001);
  });

  it('draws the whole population once when as many are asked for as there are', () => {
    fc.assert(
      fc.property(smallSpecifications, fc.nat(), ({ wanted, longest }, seed) => {
        fc.pre(longest.a + longest.b < 5);
        const size = populationOf(wanted as WrittenSpecification);
        fc.pre(size > 0);
        const problems = made({ ...(wanted as WrittenSpecification), count: size, seed });
        expect(new Set(problems.map(nameOf)).size).toBe(size);
      }),
      { numRuns: 40, seed: 3 },
    );
  });

  it('draws only what is asked for, with its product and its exchanges', () => {
    fc.assert(
      fc.property(smallSpecifications, fc.nat(), ({ wanted }, seed) => {
        const size = populationOf(wanted as WrittenSpecification);
        fc.pre(size > 0);
        const count = Math.min(size, 40);
        for (const problem of made({ ...(wanted as WrittenSpecification), count, seed })) {
          expectAsked(problem, wanted);
        }
      }),
      { numRuns: 120, seed: 4 },
    );
  });

  it('draws six by three digits with all conditions at once, never one twice', () => {
    const wanted: WrittenSpecification = {
      stage: 'record',
      multiplicand: { digits: 6, zeros: { inside: true }, decimals: 2 },
      multiplier: { digits: 3, zeros: 'none' },
      exchanges: [{ from: 1 }, { from: 2, to: 4 }, 3],
      largestPile: { from: 30, to: 76 },
      facts: { required: [7, [6, 8]], avoided: [[5, 5]] },
      product: { digits: 9 },
      mat: { rows: 4, columns: 9 },
      count: 3000,
      seed: 17,
    };
    const problems = made(wanted);
    expect(new Set(problems.map(nameOf)).size).toBe(3000);
    for (const problem of problems) expectAsked(problem, wanted as Wanted);
  });

  it('draws what can be played at its stage', () => {
    fc.assert(
      fc.property(smallSpecifications, fc.nat(), ({ wanted }, seed) => {
        const size = populationOf(wanted as WrittenSpecification);
        fc.pre(size > 0);
        const count = Math.min(size, 5);
        for (const problem of made({ ...(wanted as WrittenSpecification), count, seed })) {
          const { stage, multiplicand, multiplier } = problem;
          expect(parseProblem({ stage, multiplicand, multiplier }).ok).toBe(true);
        }
      }),
      { numRuns: 60, seed: 6 },
    );
  });

  it('draws the same for the same seed, and otherwise for another', () => {
    const written = {
      multiplicand: { digits: 4 },
      multiplier: { digits: 2 },
      exchanges: 2,
      count: 50,
    };
    expect(made({ ...written, seed: 9 })).toEqual(made({ ...written, seed: 9 }));
    expect(made({ ...written, seed: 9 })).not.toEqual(made({ ...written, seed: 10 }));
    expect(made({ ...written, seed: 9 })).not.toEqual(made({ ...written, seed: 9 + 2 ** 32 }));
  });

  it('says how many there are when more are asked for', () => {
    const parsed = parseSpecification({
      multiplicand: { digits: 1 },
      multiplier: { digits: 1 },
      count: 82,
    });
    expect(parsed.ok && makeProblems(parsed.value)).toEqual({
      ok: false,
      fault: { code: 'tooFew', at: 'count', available: 81 },
    });
  });

  it('takes the stage from the rows when none is asked for', () => {
    const sizes = {
      multiplicand: { digits: 2 },
      multiplier: { digits: { from: 1, to: 2 } },
      count: 60,
    };
    for (const { stage, multiplier } of made(sizes)) {
      expect(stage).toBe(multiplier.length === 1 ? 'bars1' : 'bars');
    }
  });
});

/** Products and points against decimal strings, exchanges by multiplying out what lies to the right. */
function expectAsked(problem: MadeProblem, wanted: Wanted): void {
  const [a, b] = [laid(problem.multiplicand), laid(problem.multiplier)];
  expect(isWanted(a, b, wanted), `${nameOf(problem)} for ${JSON.stringify(wanted)}`).toBe(true);
  const places = (written: string) => written.split('.')[1]?.length ?? 0;
  const scale = 10n ** BigInt(places(problem.multiplicand) + places(problem.multiplier));
  const [whole = '', decimals = ''] = problem.product.split('.');
  const padded = BigInt(whole + decimals) * (scale / 10n ** BigInt(decimals.length));
  expect(padded).toBe(BigInt(a) * BigInt(b));
  const exact = { ...wanted, exchanges: [...problem.exchanges] };
  expect(problem.exchanges.length).toBe(b.length);
  expect(isWanted(a, b, exact)).toBe(true);
}
