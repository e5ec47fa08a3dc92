import { describe, it } from 'vitest';
import { SLIPS } from '../oracle/slips.ts';
import { APART_PAIRS, expectSpent } from './slipping.ts';

const CASES = 60;

describe.each(['bars', 'facts'] as const)('at %s', (stage) => {
  it.each(Object.keys(SLIPS))('one slip costs one step: %s', (name) =>
    expectSpent(stage, () => [name], 1, CASES),
  );

  it.each(APART_PAIRS)('two slips on different steps cost two: %s and %s', (some, others) => {
    const names = (seed: number) => [some[seed % some.length]!, others[seed % others.length]!];
    expectSpent(stage, names, 2, CASES / 4);
  });
});
