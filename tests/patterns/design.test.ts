import { expect, test } from 'vitest';
import { CATALOGUE } from '../../engine/patterns/catalogue/index.ts';
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
