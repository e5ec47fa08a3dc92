import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeProblems, parseSpecification } from '../../engine/problems/index.ts';

const codeAndPlace = (written: unknown): string => {
  const parsed = parseSpecification(written);
  return parsed.ok ? 'read' : `${parsed.fault.code} ${parsed.fault.at}`;
};

const CASES: [written: unknown, refused: string][] = [
  [null, 'notAnObject '],
  [[], 'notAnObject '],
  [{ level: 3 }, 'unknownField level'],
  [{ multiplier: { lenght: 2 } }, 'unknownField multiplier.lenght'],
  [{ stage: 'beads' }, 'unknownWord stage'],
  [{ multiplicand: 3 }, 'notAnObject multiplicand'],
  [{ multiplicand: { digits: 0 } }, 'outOfRange multiplicand.digits'],
  [{ multiplicand: { digits: 2.5 } }, 'notAWholeNumber multiplicand.digits'],
  [{ multiplier: { digits: { from: 7 } } }, 'outOfRange multiplier.digits.from'],
  [{ multiplier: { digits: { from: 3, to: 2 } } }, 'emptyRange multiplier.digits'],
  [{ multiplier: { zeros: 'many' } }, 'notAZeroCondition multiplier.zeros'],
  [{ multiplier: { zeros: { inside: 1 } } }, 'notAZeroCondition multiplier.zeros.inside'],
  [{ multiplicand: { decimals: 9 } }, 'outOfRange multiplicand.decimals'],
  [{ exchanges: [1, 'two'] }, 'notAnObject exchanges[1]'],
  [{ exchanges: [1, 1, 1, 1] }, 'tooMany exchanges'],
  [{ largestPile: 90 }, 'outOfRange largestPile'],
  [{ facts: { required: [[6, 7, 8]] } }, 'notAFact facts.required[0]'],
  [{ facts: { avoided: [3, 0] } }, 'notAFact facts.avoided[1]'],
  [{ facts: { allowed: 7 } }, 'notAList facts.allowed'],
  [{ facts: { required: new Array(21).fill(7) } }, 'tooMany facts.required'],
  [{ facts: { required: new Array(2) } }, 'notAFact facts.required[0]'],
  [{ product: { digits: '5' } }, 'notAnObject product.digits'],
  [{ mat: { rows: 4 } }, 'notAWholeNumber mat.columns'],
  [{ count: 0 }, 'outOfRange count'],
  [{ count: Number.NaN }, 'notAWholeNumber count'],
  [{ seed: -1 }, 'outOfRange seed'],
];

describe('a specification from outside', () => {
  it.each(CASES)('is refused by code and place: %j', (written, refused) => {
    expect(codeAndPlace(written)).toBe(refused);
  });

  it('is answered with a typed result, whatever it is', () => {
    fc.assert(
      fc.property(fc.oneof(fc.anything(), nearlyRight), (written) => {
        const parsed = parseSpecification(written);
        if (parsed.ok) return;
        expect(parsed.fault.code).toMatch(/^[a-z][A-Za-z]+$/);
        expect(typeof parsed.fault.at).toBe('string');
      }),
      { numRuns: 3000 },
    );
  });

  it('leads to problems or to a typed refusal, never to a throw', { timeout: 240_000 }, () => {
    const codes = new Set<string>();
    fc.assert(
      fc.property(wellFormed, (written) => {
        const parsed = parseSpecification(written);
        const made = parsed.ok ? makeProblems(parsed.value) : parsed;
        codes.add(made.ok ? 'made' : made.fault.code);
      }),
      { numRuns: 60, seed: 5 },
    );
    expect([...codes].sort()).toEqual(['impossible', 'made', 'tooFew', 'tooLarge']);
  });
});

const junk = fc.oneof(fc.anything(), fc.integer(), fc.constantFrom('none', -0, 1e308, '', [], {}));
const span = fc.oneof(junk, fc.record({ from: junk, to: junk }, { requiredKeys: [] }));
const factor = fc.record({ digits: span, zeros: junk, decimals: span }, { requiredKeys: [] });
const nearlyRight = fc.record(
  {
    stage: junk,
    multiplicand: fc.oneof(factor, junk),
    multiplier: factor,
    exchanges: fc.oneof(span, fc.array(span)),
    largestPile: span,
    facts: fc.record(
      { allowed: junk, required: fc.array(junk), avoided: fc.array(fc.tuple(junk, junk)) },
      { requiredKeys: [] },
    ),
    product: fc.record({ digits: span }, { requiredKeys: [] }),
    mat: fc.record({ rows: junk, columns: junk }),
    count: junk,
    seed: junk,
  },
  { requiredKeys: [] },
);

const between = (from: number, to: number) => fc.integer({ min: from, max: to });
const wellFormed = fc.record(
  {
    multiplicand: fc.record({ digits: between(1, 7) }),
    multiplier: fc.record({ digits: between(1, 3), zeros: fc.constantFrom('none', 'some') }),
    exchanges: fc.oneof(between(0, 6), fc.array(between(0, 6), { minLength: 1, maxLength: 3 })),
    largestPile: fc.record({ from: between(1, 50) }),
    facts: fc.record({ required: fc.array(between(1, 9), { maxLength: 3 }) }),
    product: fc.record({ digits: between(1, 10) }),
    count: between(1, 5000),
  },
  { requiredKeys: ['multiplicand', 'multiplier', 'count'] },
);
