import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  countProblems,
  exampleOf,
  makeProblems,
  parseSpecification,
  type WrittenSpecification,
} from '../../engine/problems/index.ts';
import { countByLooking, isWanted, type Wanted } from '../oracle/problems-to-order.ts';
import { smallSpecifications } from './specifications.ts';

function conflictOf(written: WrittenSpecification): string[] {
  const parsed = parseSpecification(written);
  const made = parsed.ok ? makeProblems(parsed.value) : parsed;
  if (made.ok) throw new Error('possible');
  expect(made.fault.code).toBe('impossible');
  return (made.fault.clauses as { at: string }[]).map(({ at }) => at);
}

/** The specification that has these clauses alone. */
const only = (written: object, paths: readonly string[]): WrittenSpecification =>
  (kept(written, '', paths) ?? {}) as WrittenSpecification;

function kept(value: unknown, at: string, paths: readonly string[]): unknown {
  if (paths.includes(at)) return value;
  if (Array.isArray(value)) return keptItems(value, at, paths);
  if (typeof value !== 'object' || value === null) return undefined;
  const entries = Object.entries(value)
    .map(([key, entry]) => [key, kept(entry, at === '' ? key : `${at}.${key}`, paths)])
    .filter(([, entry]) => entry !== undefined);
  return entries.length > 0 ? Object.fromEntries(entries) : undefined;
}

/** Rows of exchanges keep their places: a row without its clause must exist and is free. */
function keptItems(items: readonly unknown[], at: string, paths: readonly string[]): unknown {
  const wanted = items.map((item, index) => (paths.includes(`${at}[${index}]`) ? item : undefined));
  const last = wanted.findLastIndex((item) => item !== undefined);
  if (last < 0) return undefined;
  if (at !== 'exchanges') return wanted.filter((item) => item !== undefined);
  return wanted.slice(0, last + 1).map((item) => item ?? { from: 0 });
}

const CASES: [why: string, written: WrittenSpecification, conflict: string[]][] = [
  ['a stage without numbers', { stage: 'walk' }, ['stage']],
  [
    'a one-row stage and two rows',
    { stage: 'bars1', multiplicand: { digits: 3 }, multiplier: { digits: 2 } },
    ['stage', 'multiplier.digits'],
  ],
  [
    'no zeros, but one at the end',
    { multiplicand: { digits: 2, zeros: { inside: true } }, multiplier: { digits: 1 } },
    ['multiplicand.digits', 'multiplicand.zeros'],
  ],
  [
    'more exchanges than squares',
    { multiplicand: { digits: 3 }, multiplier: { digits: 2 }, exchanges: { from: 4 } },
    ['multiplicand.digits', 'exchanges'],
  ],
  [
    'a fact larger than any pile may be',
    {
      multiplicand: { digits: 3 },
      multiplier: { digits: 2 },
      largestPile: { to: 40 },
      facts: {
        required: [
          [2, 3],
          [6, 7],
        ],
      },
    },
    ['largestPile', 'facts.required[1]'],
  ],
  [
    'a fact both required and avoided by its table',
    {
      multiplicand: { digits: 2 },
      multiplier: { digits: 2 },
      facts: { required: [[6, 7]], avoided: [9, 7] },
    },
    ['facts.required[0]', 'facts.avoided[1]'],
  ],
  [
    'three facts that no two digits share',
    {
      multiplicand: { digits: 2 },
      multiplier: { digits: 1 },
      facts: {
        required: [
          [1, 2],
          [3, 4],
          [5, 6],
        ],
      },
    },
    ['multiplier.digits', 'facts.required[0]', 'facts.required[1]'],
  ],
  [
    'every table avoided',
    {
      multiplicand: { digits: 2 },
      multiplier: { digits: 2 },
      facts: { avoided: [1, 2, 3, 4, 5, 6, 7, 8, 9] },
    },
    [0, 1, 2, 3, 4, 5, 6, 7, 8].map((entry) => `facts.avoided[${entry}]`),
  ],
  [
    'a product too long for its numbers',
    { multiplicand: { digits: 2 }, multiplier: { digits: { to: 2 } }, product: { digits: 5 } },
    ['multiplicand.digits', 'multiplier.digits', 'product.digits'],
  ],
  [
    'numbers too long for the mat',
    { multiplicand: { digits: 6 }, multiplier: { digits: 3 }, mat: { rows: 4, columns: 7 } },
    ['multiplicand.digits', 'multiplier.digits', 'mat'],
  ],
  [
    'numbers too long for the largest mat',
    { multiplicand: { digits: 12 }, multiplier: { digits: 2 } },
    ['multiplicand.digits', 'multiplier.digits'],
  ],
  [
    'a long product of small digits',
    {
      multiplicand: { digits: 3 },
      multiplier: { digits: 2 },
      facts: {
        allowed: [
          [1, 1],
          [1, 2],
          [2, 2],
        ],
      },
      product: { digits: 5 },
      exchanges: 0,
    },
    ['multiplicand.digits', 'multiplier.digits', 'facts.allowed', 'product.digits'],
  ],
];

describe('a specification that no problem satisfies', () => {
  it.each(CASES)('names the clauses: %s', (_, written, conflict) => {
    expect(conflictOf(written)).toEqual(conflict);
    for (const left of conflict) {
      const rest = conflict.filter((path) => path !== left);
      expectSatisfiable(only(written, rest));
    }
  });

  it('is never called so when looking finds a problem, and its conflict is smallest', {
    timeout: 240_000,
  }, () => {
    let seen = 0;
    for (const { wanted, longest } of fc.sample(smallSpecifications, { numRuns: 110, seed: 8 })) {
      if (longest.a + longest.b > 4) continue;
      const parsed = parseSpecification(wanted);
      const count = parsed.ok ? countProblems(parsed.value) : parsed;
      expect(count.ok).toBe(countByLooking(wanted, longest) > 0);
      if (count.ok) continue;
      seen += 1;
      const conflict = conflictOf(wanted as WrittenSpecification);
      expect(countByLooking({ ...only(wanted, conflict) } as Wanted, { a: 3, b: 2 })).toBe(0);
      const paths = parsed.ok ? parsed.value.clauses.map(({ at }) => at) : [];
      for (const fewer of subsetsOf(paths, conflict.length - 1)) {
        expectSatisfiable(only(wanted, fewer));
      }
    }
    expect(seen).toBeGreaterThan(20);
  });

  it('has the value of each clause beside its path', () => {
    const parsed = parseSpecification({ multiplicand: { digits: 2 }, exchanges: { from: 3 } });
    const example = parsed.ok && exampleOf(parsed.value);
    expect(example).toEqual({
      ok: false,
      fault: {
        code: 'impossible',
        at: 'multiplicand.digits',
        clauses: [
          { at: 'multiplicand.digits', written: 2 },
          { at: 'exchanges', written: { from: 3 } },
        ],
      },
    });
  });
});

function subsetsOf<T>(items: readonly T[], size: number): T[][] {
  if (size === 0) return [[]];
  return items.flatMap((item, index) =>
    subsetsOf(items.slice(index + 1), size - 1).map((rest) => [item, ...rest]),
  );
}

/** A problem is found, and looking at it from the words of the specification confirms it. */
function expectSatisfiable(written: WrittenSpecification): void {
  const parsed = parseSpecification(written);
  const example = parsed.ok ? exampleOf(parsed.value) : parsed;
  if (!example.ok) throw new Error(`${JSON.stringify(written)}: ${JSON.stringify(example.fault)}`);
  const { multiplicand, multiplier } = example.value;
  const laid = (text: string): string => text.replace('.', '').replace(/^0+/, '');
  expect(isWanted(laid(multiplicand), laid(multiplier), written as Wanted)).toBe(true);
}
