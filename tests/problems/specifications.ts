import fc from 'fast-check';
import type { Wanted } from '../oracle/problems-to-order.ts';

/** A range inside `from` to `to`, in each way of writing one. */
const span = (from: number, to: number) =>
  fc
    .tuple(
      fc.integer({ min: from, max: to }),
      fc.integer({ min: from, max: to }),
      fc.nat({ max: 3 }),
    )
    .map(([one, other, form]) => {
      const [low, high] = one < other ? [one, other] : [other, one];
      return [low, { from: low }, { to: high }, { from: low, to: high }][form]!;
    });

const zeros = fc.oneof(
  fc.constant('none' as const),
  fc.constant('some' as const),
  fc.record({ inside: fc.boolean(), atTheEnd: fc.boolean() }, { requiredKeys: [] }),
);

const digit = fc.integer({ min: 1, max: 9 });
const fact = fc.oneof(
  { weight: 1, arbitrary: digit },
  { weight: 3, arbitrary: fc.tuple(digit, digit) },
);
const tables = fc.uniqueArray(digit, { minLength: 3, maxLength: 8 });

/** Sparse: each condition is there one time in `outOf`, so that many specifications can be satisfied. */
const sometimes = <T>(arbitrary: fc.Arbitrary<T>, outOf: number): fc.Arbitrary<T | undefined> =>
  fc.oneof({ weight: 1, arbitrary }, { weight: outOf - 1, arbitrary: fc.constant(undefined) });

const leftOut = <T extends object>(value: T): T =>
  Object.fromEntries(Object.entries(value).filter(([, entry]) => entry !== undefined)) as T;

/** Mostly short numbers: looking at four by two digits means looking at 810,000 pairs. */
const lengths = fc.oneof(
  { weight: 60, arbitrary: fc.constantFrom([1, 1], [2, 1], [3, 1], [2, 2], [1, 2]) },
  { weight: 20, arbitrary: fc.constantFrom([4, 1], [3, 2]) },
  { weight: 1, arbitrary: fc.constant([4, 2]) },
);

const digitsUpTo = (longest: number) =>
  fc
    .tuple(fc.integer({ min: 1, max: longest }), fc.boolean())
    .map(([shortest, exactly]) => (exactly ? longest : { from: shortest, to: longest }));

export interface Sized {
  readonly wanted: Wanted;
  readonly longest: { a: number; b: number };
}

/** Small specifications, up to four by two digits, with any mixture of conditions. */
export const smallSpecifications: fc.Arbitrary<Sized> = lengths.chain(([a, b]) =>
  fc
    .record({
      stage: sometimes(fc.constantFrom('build', 'bars1', 'bars', 'facts', 'record', 'paper'), 6),
      multiplicand: factor(a!),
      multiplier: factor(b!),
      exchanges: sometimes(
        fc.oneof(span(0, 3), fc.array(span(0, 3), { minLength: 1, maxLength: b! })),
        3,
      ),
      largestPile: sometimes(span(4, 85), 3),
      facts: sometimes(
        fc
          .record({
            allowed: sometimes(tables, 3),
            required: sometimes(fc.array(fact, { minLength: 1, maxLength: 2 }), 4),
            avoided: sometimes(fc.array(fact, { minLength: 1, maxLength: 4 }), 2),
          })
          .map(leftOut),
        3,
      ),
      product: sometimes(fc.record({ digits: span(Math.max(1, a! + b! - 2), a! + b!) }), 4),
      mat: sometimes(
        fc.record({ rows: fc.constantFrom(1, 2, 4), columns: fc.constantFrom(4, 6, 9) }),
        8,
      ),
    })
    .map((wanted) => ({ wanted: leftOut(wanted) as Wanted, longest: { a: a!, b: b! } })),
);

function factor(longest: number) {
  return fc
    .record({
      digits: digitsUpTo(longest),
      zeros: sometimes(zeros, 4),
      decimals: sometimes(span(0, 2), 8).map((places) =>
        // An open end would reach to the limit of eight places and only multiply the count.
        typeof places === 'object' ? { from: 0, to: 2, ...places } : places,
      ),
    })
    .map(leftOut);
}
