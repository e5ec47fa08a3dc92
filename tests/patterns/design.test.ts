import { expect, test } from 'vitest';
import { CATALOGUE } from '../../engine/patterns/catalogue/index.ts';
import { setFor } from '../../engine/patterns/design/designed.ts';
import { evidenceSet } from '../../engine/patterns/design/evidence-set.ts';
import { randomProblems } from '../../engine/patterns/design/pool.ts';
import {
  alwaysAlike,
  separatingSet,
  shareParted,
} from '../../engine/patterns/design/separating.ts';
import { showingOf } from '../../engine/patterns/design/showing.ts';
import { RIGHT_WAY } from '../../engine/pupils/beliefs.ts';
import { problemOf } from './by-hand.ts';

const SHAPE = { multiplicand: 3, multiplier: 2, decimals: false };
const variantOf = (id: string) => {
  const pattern = CATALOGUE.find((each) => each.id === id)!;
  return { pattern, beliefs: Object.values(pattern.beliefs)[0]! };
};
const SOME = [
  'carry never handed on',
  'row not moved over',
  'rows lined up on the left',
  'row closed up over a zero',
  'adds instead of multiplying',
].map(variantOf);

test('a designed set parts every pair that its pool can part, and no problem of it is needless', () => {
  const pool = randomProblems('paper', SHAPE, 40, 3);
  const { chosen, table, together } = separatingSet(pool, SOME);
  const set = chosen.map((index) => pool[index]!);
  expect(together).toEqual([]);
  expect(shareParted(set, SOME)).toBe(1);
  for (const left of set) {
    expect(
      shareParted(
        set.filter((each) => each !== left),
        SOME,
      ),
    ).toBeLessThan(1);
  }
  const columns = SOME.map((_, at) => table.map((outcomes) => outcomes[at]).join());
  expect(new Set(columns).size).toBe(SOME.length);
});

/** All ways to take so many of a list. */
function choices<T>(from: readonly T[], size: number): T[][] {
  if (size === 0) return [[]];
  return from.flatMap((first, at) =>
    choices(from.slice(at + 1), size - 1).map((others) => [first, ...others]),
  );
}

test('no smaller set of the pool would do: all of them are tried', () => {
  for (const seed of [1, 2, 3]) {
    const pool = randomProblems('paper', SHAPE, 12, seed);
    const all = shareParted(pool, SOME);
    const { chosen } = separatingSet(pool, SOME);
    expect(
      shareParted(
        chosen.map((index) => pool[index]!),
        SOME,
      ),
    ).toBe(all);
    const smaller = choices(pool, chosen.length - 1);
    expect(smaller.filter((set) => shareParted(set, SOME) === all)).toEqual([]);
  }
});

test('each problem of the set says which pairs it alone parts', () => {
  const pool = randomProblems('paper', SHAPE, 40, 3);
  const { chosen, table, parting } = separatingSet(pool, SOME);
  expect(parting).toHaveLength(chosen.length);
  const outcomeOf = (own: readonly number[], index: number) => (index < 0 ? 0 : own[index]);
  for (const [at, { parts, alone }] of parting.entries()) {
    expect(alone.length).toBeGreaterThan(0);
    expect(parts).toBeGreaterThanOrEqual(alone.length);
    for (const [one, other] of alone) {
      const differs = table.map((own) => outcomeOf(own, one) !== outcomeOf(own, other));
      expect(differs).toEqual(table.map((_, index) => index === at));
    }
  }
});

test('the set for written work parts all patterns, and random sets of its size mostly do not', () => {
  const { problems, table, inseparable, randomSets } = setFor('paper');
  const [least, mean] = randomSets;
  expect(new Set(Object.values(table).map(String)).size).toBe(Object.keys(table).length);
  expect(Object.values(table).every((outcomes) => outcomes.some((each) => each > 0))).toBe(true);
  expect(inseparable).toEqual([]);
  expect(problems.length).toBeLessThanOrEqual(3);
  expect(least).toBeLessThan(mean);
  expect(mean).toBeLessThan(1);
});

test('a set for evidence takes a problem from the spare ones where a pattern shows in none of the pool', () => {
  const zeroLess = [problemOf('paper', '347', '26'), problemOf('paper', '589', '34')];
  const spare = [problemOf('paper', '468', '73'), problemOf('paper', '304', '26')];
  const set = evidenceSet(zeroLess, [variantOf('row closed up over a zero')], 2, spare);
  expect(set.map(({ multiplicand }) => multiplicand.text)).toContain('304');
  expect(set.map(({ multiplicand }) => multiplicand.text)).not.toContain('468');
});

test('two names for one belief are never parted, and the proof goes over all problems', () => {
  const one = variantOf('row not moved over');
  const twin = { ...one, pattern: { ...one.pattern, id: 'twin' } };
  const pool = randomProblems('paper', SHAPE, 10, 3);
  expect(separatingSet(pool, [one, twin]).together).toEqual([[0, 1]]);
  expect(alwaysAlike('paper', one, variantOf('rows lined up on the left'))).toBe(false);
  const nothing = { ...one, beliefs: RIGHT_WAY };
  expect(alwaysAlike('paper', nothing, { ...nothing })).toBe(true);
});

test('a pattern shows in the steps that it changes itself, not in what follows from them', () => {
  const { steps } = showingOf(problemOf('paper', '347', '26'), variantOf('row not moved over'));
  expect(steps).toEqual([{ work: 0, step: 'zero:1:0' }]);
});

test('a set for evidence shows more of the patterns than the first problems of the pool', () => {
  const pool = randomProblems('paper', SHAPE, 30, 5);
  const shown = (problems: typeof pool) =>
    Math.min(
      ...SOME.map((variant) =>
        problems.reduce((sum, problem) => sum + showingOf(problem, variant).steps.length, 0),
      ),
    );
  expect(shown([...evidenceSet(pool, SOME, 3)])).toBeGreaterThan(shown(pool.slice(0, 3)));
});

test('the pool is the same for the same seed', () => {
  const texts = (seed: number) =>
    randomProblems('bars', SHAPE, 5, seed).map(({ multiplicand }) => multiplicand.text);
  expect(texts(1)).toEqual(texts(1));
  expect(texts(1)).not.toEqual(texts(2));
});
