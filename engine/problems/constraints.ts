import { fits, type Size as MatSize, sizeNeeded } from '../mat/geometry.ts';
import { rowsSuit } from './candidate.ts';
import type { FactSet } from './fact-set.ts';
import {
  COUNTABLE,
  EXCHANGES,
  LARGEST_MAT,
  MULTIPLICAND_DIGITS,
  MULTIPLIER_DIGITS,
} from './limits.ts';
import { numbersIn, overlap, type Range } from './range.ts';
import type { Clause, Condition, Factor } from './specification.ts';
import { ANY_ZEROS, type ZeroCondition } from './zeros.ts';

/** Digits of both numbers: a problem's rows are the multiplier's digits. */
export interface Size {
  readonly multiplicand: number;
  readonly multiplier: number;
}

/** All clauses of a specification together, sorted by what they bear on. */
export interface Constraints {
  /** Every size that the digits, the stage, the mat and the product leave open; shortest first. */
  readonly sizes: readonly Size[];
  readonly zeros: Readonly<Record<Factor, ZeroCondition>>;
  readonly decimals: Readonly<Record<Factor, Range>>;
  /** One entry for each row that a mat can have; null: as often as it likes. */
  readonly exchanges: readonly (Range | null)[];
  readonly pile: Range | null;
  readonly permitted: FactSet | null;
  readonly required: readonly FactSet[];
  readonly productDigits: Range | null;
  /** Whether a condition ties the digits of both numbers together, beyond the product's length. */
  readonly coupled: boolean;
}

export function constraintsOf(clauses: readonly Clause[]): Constraints {
  const exchanges = numbersIn({ from: 0, to: LARGEST_MAT.rows - 1 }).map((row) =>
    exchangesIn(clauses, row),
  );
  const pile = together(of(clauses, 'largestPile'));
  const permitted = permittedBy(clauses);
  const required = of(clauses, 'required').map(({ facts }) => facts);
  return {
    sizes: sizesFor(clauses),
    zeros: {
      multiplicand: zerosOf(clauses, 'multiplicand'),
      multiplier: zerosOf(clauses, 'multiplier'),
    },
    decimals: {
      multiplicand: decimalsOf(clauses, 'multiplicand'),
      multiplier: decimalsOf(clauses, 'multiplier'),
    },
    exchanges,
    pile,
    permitted,
    required,
    productDigits: together(of(clauses, 'productDigits')),
    coupled: Boolean(pile || permitted || required.length > 0 || exchanges.some(binds)),
  };
}

type OfKind<Kind extends Condition['kind']> = Extract<Clause, { kind: Kind }>;

const of = <Kind extends Condition['kind']>(clauses: readonly Clause[], kind: Kind) =>
  clauses.filter((clause): clause is OfKind<Kind> => clause.kind === kind);

const together = (clauses: readonly { readonly range: Range }[]): Range | null =>
  clauses.length === 0 ? null : clauses.map(({ range }) => range).reduce(overlap);

const exchangesIn = (clauses: readonly Clause[], row: number): Range | null =>
  together(
    of(clauses, 'exchanges').filter((clause) => clause.row === 'every' || clause.row === row),
  );

const decimalsOf = (clauses: readonly Clause[], factor: Factor): Range =>
  together(of(clauses, 'decimals').filter((clause) => clause.of === factor)) ?? { from: 0, to: 0 };

const zerosOf = (clauses: readonly Clause[], factor: Factor): ZeroCondition =>
  of(clauses, 'zeros').find((clause) => clause.of === factor)?.zeros ?? ANY_ZEROS;

function permittedBy(clauses: readonly Clause[]): FactSet | null {
  const allowed = of(clauses, 'allowed');
  const avoided = of(clauses, 'avoided');
  if (allowed.length + avoided.length === 0) return null;
  return new Uint8Array(100).map((_, fact) => {
    const may =
      allowed.every(({ facts }) => facts[fact]) && !avoided.some(({ facts }) => facts[fact]);
    return may ? 1 : 0;
  });
}

function sizesFor(clauses: readonly Clause[]): Size[] {
  const sizes = digitsFor(clauses, 'multiplier', MULTIPLIER_DIGITS).flatMap((multiplier) =>
    digitsFor(clauses, 'multiplicand', MULTIPLICAND_DIGITS).map((multiplicand) => ({
      multiplicand,
      multiplier,
    })),
  );
  return sizes
    .filter(
      (size) => clauses.every((clause) => leavesOpen(clause, size)) && liesOn(size, LARGEST_MAT),
    )
    .sort((a, b) => a.multiplicand + a.multiplier - b.multiplicand - b.multiplier);
}

const digitsFor = (clauses: readonly Clause[], factor: Factor, all: Range): number[] =>
  numbersIn(
    of(clauses, 'digits')
      .filter((clause) => clause.of === factor)
      .map(({ range }) => range)
      .reduce(overlap, all),
  );

function leavesOpen(clause: Clause, size: Size): boolean {
  switch (clause.kind) {
    case 'stage':
      return rowsSuit(clause.stage, size.multiplier);
    case 'mat':
      return liesOn(size, clause);
    case 'exchanges':
      return clause.row === 'every' || clause.row < size.multiplier;
    case 'productDigits':
      return productLengths(size, clause.range) !== 'none';
    default:
      return true;
  }
}

const liesOn = (size: Size, mat: MatSize): boolean =>
  fits(mat, sizeNeeded(size.multiplicand, size.multiplier));

/** Small enough for conditions that tie the digits of both numbers together to be counted. */
export const isCountable = ({ multiplicand, multiplier }: Size): boolean =>
  multiplicand <= COUNTABLE.multiplicand && multiplier <= COUNTABLE.multiplier;

/** A product of m by n digits has m + n of them, or one fewer. */
export function productLengths(size: Size, wanted: Range): 'both' | 'long' | 'short' | 'none' {
  const long = size.multiplicand + size.multiplier;
  const mayBeLong = wanted.from <= long && long <= wanted.to;
  const mayBeShort = wanted.from <= long - 1 && long - 1 <= wanted.to;
  if (mayBeLong && mayBeShort) return 'both';
  return mayBeLong ? 'long' : mayBeShort ? 'short' : 'none';
}

/** Whether a range of exchanges says anything at all. */
export const binds = (range: Range | null): range is Range =>
  range !== null && (range.from > 0 || range.to < EXCHANGES.to);
