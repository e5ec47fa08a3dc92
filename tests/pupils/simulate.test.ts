import { expect, test } from 'vitest';
import { CATALOGUE } from '../../engine/patterns/catalogue/index.ts';
import { randomProblems } from '../../engine/patterns/design/pool.ts';
import { figuresOf } from '../../engine/pupils/figures.ts';
import { intervalOf } from '../../engine/pupils/interval.ts';
import { eligibleVariants, measure, type Told } from '../../engine/pupils/measure.ts';
import { simulate } from '../../engine/pupils/simulate.ts';
import { problemOf } from '../patterns/by-hand.ts';

const SHAPE = { multiplicand: 3, multiplier: 2, decimals: false };

test('a run is the same for the same seed, and finds what its pupils hold', () => {
  const problems = randomProblems('paper', SHAPE, 5, 8);
  const run = (seed: number) => measure(problems, { seed, pupils: 8, slip: 0.02 });
  const told = run(4);
  expect(JSON.stringify(run(4))).toBe(JSON.stringify(told));
  expect(JSON.stringify(run(5))).not.toBe(JSON.stringify(told));
  expect(figuresOf(told, []).single.recall).toBeGreaterThan(0.7);
});

test('only patterns that three steps in two problems could show are held', () => {
  const problems = [problemOf('paper', '347', '26'), problemOf('paper', '589', '34')];
  const ids = eligibleVariants(problems).map(({ pattern }) => pattern.id);
  expect(ids).toContain('adds instead of multiplying');
  // One placeholder in each of two problems: two steps.
  expect(ids).not.toContain('row not moved over');
  expect(ids).not.toContain('row closed up over a zero');
});

const WALK = { seed: 4, pupils: 1, problems: 6, slip: 0.05, set: 'designed' } as const;

test('a stage that no pupil plays is refused by name', () => {
  expect(simulate({ ...WALK, stage: 'walk' })).toEqual({
    ok: false,
    fault: { code: 'notPlayable', at: 'stage' },
  });
});

const [one, other] = CATALOGUE.map((pattern) => ({
  pattern,
  beliefs: Object.values(pattern.beliefs)[0]!,
}));

function told(
  kind: Told['pupil']['kind'],
  holds: readonly string[],
  ids: readonly string[][],
): Told {
  const variants = [one!, other!].filter(({ pattern }) => holds.includes(pattern.id));
  const reported = ids.map((group) => ({ ids: group, posterior: 1, steps: [] }));
  return {
    pupil: { kind, holds: variants, beliefs: {} },
    explanation: { reported, unnamed: false, notTested: [] },
  };
}

test('figures count what is named, by hand', () => {
  const [a, b] = [one!.pattern.id, other!.pattern.id];
  const run = [
    told('single', [a], [[a]]),
    told('single', [a], [[b]]),
    told('single', [a], []),
    told('single', [a], [[a, b]]),
    told('pair', [a, b], [[a], [b]]),
    told('pair', [a, b], [[a]]),
    told('slipsOnly', [], [[a]]),
    told('slipsOnly', [], []),
    told('outside', [], []),
  ];
  const figures = figuresOf(run, []);
  expect(figures.single).toMatchObject({ recall: 1 / 4, precision: 1 / 3 });
  expect(figures.pairs.recall).toBe(1 / 2);
  expect(figures.slipsOnly.falseAlarms).toBe(1 / 2);
  expect(figures.outside.falseNames).toBe(0);
  expect(figures.groupSize).toBe(4 / 3);
  expect(figures.perPattern[a]).toMatchObject({ recall: 1 / 4, n: 4 });
  expect(figuresOf(run, [[a, b]]).single).toMatchObject({ recall: 2 / 4, precision: 2 / 3 });
});

test('intervals as in the published example: 81 of 263 is 0.2553 to 0.3662', () => {
  // Newcombe, Statistics in Medicine 17 (1998), 857–872, table I, method 3, from memory.
  const [from, to] = intervalOf(81, 263);
  expect(from).toBeCloseTo(0.2553, 4);
  expect(to).toBeCloseTo(0.3662, 4);
  expect(intervalOf(0, 0)).toEqual([0, 1]);
});
