import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseProblem, replay, score } from '../../engine/index.ts';
import { type Habits, handOf, USUAL_HABITS } from '../../engine/pupils/hand.ts';
import { playThrough } from '../../engine/pupils/play.ts';

const STAGES = ['bars', 'record', 'cells', 'paper'] as const;

const habits: fc.Arbitrary<Habits> = fc.record({
  rows: fc.constantFrom('unitsFirst', 'topFirst'),
  carries: fc.constantFrom('noted', 'inTheHead'),
  placeholders: fc.constantFrom('written', 'leftEmpty'),
  asksOneIn: fc.constantFrom(0, 9),
});

const number = (most: number) =>
  fc
    .tuple(fc.integer({ min: 0, max: 10 ** most - 1 }), fc.integer({ min: 0, max: 2 }))
    .map(([whole, places]) => {
      const text = String(whole).padStart(places + 1, '0');
      return places === 0 ? text : `${text.slice(0, -places)}.${text.slice(-places)}`;
    });

describe.each(STAGES)('at %s', (stage) => {
  test('a pupil without patterns and slips earns full marks, by whatever habits', () => {
    fc.assert(
      fc.property(number(4), number(3), habits, (multiplicand, multiplier, own) => {
        const problem = parseProblem({ stage, multiplicand, multiplier });
        if (!problem.ok) return;
        const work = replay(problem.value, playThrough(problem.value, {}, handOf(own, 0, 1)));
        expect(work.log.filter(({ refused }) => refused !== undefined)).toEqual([]);
        expect(work.complete).toBe(true);
        expect(score([work]).fraction).toEqual({ num: 1n, den: 1n });
      }),
      { numRuns: 60 },
    );
  });

  test('same seed, same work; another seed, other slips', () => {
    const problem = parseProblem({ stage, multiplicand: '347', multiplier: '26' });
    if (!problem.ok) throw new Error('no problem');
    const play = (seed: number) =>
      JSON.stringify(playThrough(problem.value, {}, handOf(USUAL_HABITS, 0.3, seed)));
    expect(play(5)).toBe(play(5));
    expect(play(5)).not.toBe(play(6));
  });
});

test('a digit slips as often as said, to each other digit alike', () => {
  const hand = handOf(USUAL_HABITS, 0.5, 11);
  const counts = Array.from({ length: 10 }, () => 0);
  const tries = 20_000;
  for (let index = 0; index < tries; index += 1) counts[hand.digit(4)]! += 1;
  expect(Math.abs(counts[4]! / tries - 0.5)).toBeLessThan(0.02);
  // Chi-square with 8 degrees of freedom, p = 0.001: 26.12.
  const others = counts.filter((_, digit) => digit !== 4);
  const mean = others.reduce((sum, count) => sum + count, 0) / 9;
  const chi = others.reduce((sum, count) => sum + (count - mean) ** 2 / mean, 0);
  expect(chi).toBeLessThan(26.12);
});
