import type { Square } from '../mat/geometry.ts';

/**
 * What a pupil believes to be the way of working. Each belief answers one decision from what the
 * pupil sees then; `right` is what the right way would answer. A belief that is not held is absent.
 * Digits are listed lowest first; columns and rows count from 0 at the lower right corner.
 */
export interface Beliefs {
  /** The digits laid along an edge; null: a square left empty. */
  readonly build?: Belief<BuildAt, readonly (number | null)[]>;
  /** A fact as remembered. */
  readonly fact?: Belief<FactAt, number>;
  /** The multiplier's digit that a pair is worked with. */
  readonly partner?: Belief<PairAt, number>;
  /** Whether a pair (or, on paper, a whole row: column 0) is worked at all. */
  readonly works?: Belief<PairAt, boolean>;
  /** How many columns left of its own square a pair is put down. */
  readonly aside?: Belief<PairAt, number>;
  /** Empty places at the end of a written row. */
  readonly shift?: Belief<ShiftAt, number>;
  /** One column of a row on paper. */
  readonly column?: Belief<ColumnAt, Column>;
  /** One column when the rows, or the diagonals, are added. */
  readonly add?: Belief<AddAt, Column>;
  /** The place at which a digit on a square is added. */
  readonly gather?: Belief<GatherAt, number>;
  /** The digits of a product that is not added up at all. */
  readonly join?: Belief<JoinAt, readonly number[] | null>;
  /** The digits read from piles, lowest first. */
  readonly read?: Belief<ReadAt, readonly number[]>;
  /** The bars laid for a pair. */
  readonly lay?: Belief<LayAt, readonly BarsLaid[]>;
  /** The total said of a pile. */
  readonly count?: Belief<CountAt, number>;
  /** What is laid for ten-bars, and how many columns to the left; null: they stay. */
  readonly exchange?: Belief<ExchangeAt, Exchanged | null>;
  /** How far from its diagonal a pile is slid, in columns to the left; null: it stays. */
  readonly slide?: Belief<SlideAt, number | null>;
  /** Digits after the product's point. */
  readonly point?: Belief<PointAt, number>;
}

type Belief<At, Answer> = (at: At, right: Answer) => Answer;

export interface BuildAt {
  readonly edge: 'bottom' | 'right';
  readonly digits: readonly number[];
}
export interface FactAt {
  readonly a: number;
  readonly b: number;
}
/** A pair of digits on the pupil's own mat or paper. */
export interface PairAt {
  readonly row: number;
  readonly column: number;
  readonly across: readonly number[];
  readonly up: readonly number[];
}
export interface ShiftAt {
  readonly row: number;
  readonly across: readonly number[];
  readonly up: readonly number[];
  /** Digits of this row, and of the row of the units digit as it stands (0: not written). */
  readonly length: number;
  readonly first: number;
}
export interface ColumnAt extends FactAt {
  readonly fact: number;
  /** What was handed on to this column, and to columns beyond the last one. */
  readonly carry: number;
  readonly beyond: number;
  readonly column: number;
  readonly last: boolean;
  readonly row: number;
  readonly across: readonly number[];
  /** What the columns before handed on in this row; and, by column, in the row worked before it. */
  readonly handed: readonly number[];
  readonly earlier: () => readonly number[];
}
/** `writes`: digits written, lowest first; `carry` is handed on `feeds` columns (1 if not said). */
export interface Column {
  readonly writes: readonly number[];
  readonly carry: number;
  readonly feeds?: number;
}
export interface AddAt {
  /** The digits that stand in the column, by row (null: none there). */
  readonly digits: readonly (number | null)[];
  readonly carry: number;
  readonly column: number;
  readonly last: boolean;
  /** Small figures noted over this column while multiplying. */
  readonly notes: readonly number[];
}
export interface GatherAt {
  readonly square: Square;
  readonly rows: number;
}
export interface JoinAt {
  /** The rows' digits above their empty places, units row first. */
  readonly rows: readonly (readonly number[])[];
}
export interface ReadAt {
  /** Beads on each square that is read. */
  readonly piles: readonly number[];
  /** `product`, or the row that is said or recorded. */
  readonly of: 'product' | number;
}
export interface LayAt extends PairAt {
  readonly kind: number;
  readonly times: number;
}
export interface BarsLaid {
  readonly kind: number;
  readonly count: number;
}
export interface CountAt {
  /** Bars by kind 1..9 and ten-bars, as they lie. */
  readonly bars: readonly number[];
}
export interface ExchangeAt {
  readonly from: Square;
  readonly tens: number;
  /** Whether piles were slid before. */
  readonly afterSliding: boolean;
}
export interface Exchanged {
  readonly ones: number;
  readonly left: number;
}
export interface SlideAt {
  readonly from: Square;
  readonly down: number;
  /** The leftmost pile of the highest row that has any. */
  readonly outermost: boolean;
}
export interface PointAt {
  /** Digits after the point of multiplicand and multiplier, and digits of the product. */
  readonly places: readonly [number, number];
  readonly written: readonly number[];
}

type Name = keyof Beliefs;
type AtOf<N extends Name> = Parameters<NonNullable<Beliefs[N]>>[0];
type AnswerOf<N extends Name> = ReturnType<NonNullable<Beliefs[N]>>;

/** What is believed; the right way where nothing else is. */
export function believed<N extends Name>(
  beliefs: Beliefs,
  name: N,
  at: AtOf<N>,
  right: AnswerOf<N>,
): AnswerOf<N> {
  const belief = beliefs[name] as Belief<AtOf<N>, AnswerOf<N>> | undefined;
  return belief === undefined ? right : belief(at, right);
}

export const RIGHT_WAY: Beliefs = {};

/** Both are held: where they bear on one decision, the first that leaves the right way decides. */
export function holdingBoth(one: Beliefs, other: Beliefs): Beliefs {
  const both: Record<string, unknown> = { ...one };
  for (const [name, belief] of Object.entries(other)) {
    const first = both[name] as Belief<unknown, unknown> | undefined;
    both[name] = first === undefined ? belief : firstToLeave(first, belief);
  }
  return both as Beliefs;
}

function firstToLeave(
  one: Belief<unknown, unknown>,
  other: Belief<unknown, unknown>,
): Belief<unknown, unknown> {
  return (at, right) => {
    const answer = one(at, right);
    return same(answer, right) ? other(at, right) : answer;
  };
}

function same(one: unknown, other: unknown): boolean {
  return (
    one === other || (typeof one === 'object' && JSON.stringify(one) === JSON.stringify(other))
  );
}
