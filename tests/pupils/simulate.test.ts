import { beforeAll, describe, expect, test } from 'vitest';
import { besideRandom } from '../../engine/cli/simulate-runs.ts';
import { inWords } from '../../engine/cli/simulate-words.ts';
import { CATALOGUE } from '../../engine/patterns/catalogue/index.ts';
import { randomProblems } from '../../engine/patterns/design/pool.ts';
import { figuresOf } from '../../engine/pupils/figures.ts';
import { intervalOf, intervalOfMean } from '../../engine/pupils/interval.ts';
import { eligibleVariants, measure, type Told } from '../../engine/pupils/measure.ts';
import { type Simulated, simulate } from '../../engine/pupils/simulate.ts';
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

test('the interval of a mean, by hand: 1, 1, 1, 3 has mean 1.5, deviation 1, and 1.96 × 1 ÷ 2 to each side', () => {
  const [from, to] = intervalOfMean([1, 1, 1, 3])!;
  expect(from).toBeCloseTo(1.5 - 0.98, 3);
  expect(to).toBeCloseTo(1.5 + 0.98, 3);
  expect(intervalOfMean([1])).toBeNull();
});

function simulated(stage: Simulated['stage'], set: Simulated['set']): Simulated {
  const [a] = [one!.pattern.id];
  const figures = figuresOf([told('single', [a], [[a]]), told('single', [a], [])], []);
  const problems = [['347', '26']] as const;
  return { stage, set, ...figures, eligible: 1, notEligible: [], problems, inseparable: [] };
}

test('all stages stand together, random problems beside, the last stage on top', () => {
  const runs = (['bars', 'paper'] as const).flatMap((stage) => [
    simulated(stage, 'designed'),
    simulated(stage, 'random'),
  ]);
  const { stages, ...top } = besideRandom(runs);
  expect(Object.keys(stages)).toEqual(['bars', 'paper']);
  expect(stages.bars).toMatchObject({ set: 'designed', random: { set: 'random' } });
  expect(top).toEqual(stages.paper);
});

test('in words each figure has its interval, and who is missed is named', () => {
  const words = inWords([simulated('paper', 'designed')]);
  expect(words).toContain('50.0 % [9.5, 90.5]');
  expect(words).toContain('two patterns, both reported            ≥ 85 %  nobody');
  expect(words).toContain(`${one!.pattern.id}: 50.0 % [9.5, 90.5] of 2`);
});

const SMALL = { seed: 20, pupils: 100, problems: 6, slip: 0.05, set: 'designed' } as const;

/**
 * Small runs with a fixed seed. A figure has fallen when its aim lies outside of its 95 % interval:
 * a miss more or less is chance, many are not.
 */
describe.each(['bars', 'record', 'cells', 'paper'] as const)('pupils at %s', (stage) => {
  let run: Simulated;
  beforeAll(() => {
    const result = simulate({ ...SMALL, stage });
    if (result.ok) run = result.value;
  });

  test('who holds one pattern is told so, and nothing else', () => {
    const { single, groupSize } = run;
    expect(single.interval[1]).toBeGreaterThanOrEqual(0.95);
    expect(single.recall).toBeGreaterThan(0.85);
    expect(single.precisionInterval[1]).toBeGreaterThanOrEqual(0.98);
    expect(single.precision).toBeGreaterThan(0.9);
    expect(groupSize).toBeLessThanOrEqual(1.3);
  });

  test('who holds two at different steps is told both', () => {
    const { pairs } = run;
    expect(pairs.interval[1]).toBeGreaterThanOrEqual(0.85);
    expect(pairs.recall).toBeGreaterThan(0.75);
  });

  test('slips, and procedures that are in no file, name nothing', () => {
    const { slipsOnly, outside } = run;
    expect(slipsOnly.interval[0]).toBeLessThanOrEqual(0.01);
    expect(outside.interval[0]).toBeLessThanOrEqual(0.02);
  });

  test('the designed problems can show nearly all patterns of the stage', () => {
    expect(run.eligible).toBeGreaterThanOrEqual(0.95);
  });
});
