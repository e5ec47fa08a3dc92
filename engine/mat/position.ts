import type { Edge, Slot } from '../vocabulary.ts';
import type { Square } from './geometry.ts';

/** `bars[0..8]`: how many bars of kind 1..9 lie on the square; `bars[9]`: how many ten-bars. */
export interface Pile {
  readonly bars: readonly number[];
}

/** A digit by place, the place as text ("-1"), so that it survives JSON. */
export type LineDigits = Readonly<Record<string, number>>;

export interface SquareDigit {
  readonly digit: number;
  readonly of?: Square;
}

export interface Paper {
  /** Lines by name (`partial:0`, `carry:0`, `product`, `carry:product`); a line that holds no digit is absent. */
  readonly lines: Readonly<Record<string, LineDigits>>;
  /** The multiplier row (from 0) that a line was begun for. */
  readonly begun: Readonly<Record<string, number>>;
  /** Digits after the point, by what bears it. */
  readonly points: Readonly<Record<string, number>>;
  /** Digits written on squares, by "row:column". */
  readonly squares: Readonly<Record<string, Readonly<Partial<Record<Slot, SquareDigit>>>>>;
}

/** What lies on the mat and beside it, in whatever form its paper is held. */
export interface Lying<P> {
  readonly tiles: Readonly<Record<Edge, readonly (number | null)[]>>;
  /** By [row][column]. */
  readonly piles: readonly (readonly Pile[])[];
  readonly paper: P;
  readonly said: {
    readonly rows: Readonly<Record<string, string>>;
    readonly prompts: Readonly<Record<string, string | Square>>;
  };
  readonly finished: {
    readonly rows: readonly number[];
    readonly product: boolean;
    readonly problem: boolean;
  };
}

/** What lies on mat and paper: JSON-safe, small integers and short texts only. */
export type Position = Lying<Paper>;

const NO_BARS: readonly number[] = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0];
export const EMPTY_PILE: Pile = { bars: NO_BARS };

export function emptyPosition(rows: number, columns: number): Position {
  return {
    tiles: {
      bottom: Array.from({ length: columns }, () => null),
      right: Array.from({ length: rows }, () => null),
    },
    piles: Array.from({ length: rows }, () => Array.from({ length: columns }, () => EMPTY_PILE)),
    paper: { lines: {}, begun: {}, points: {}, squares: {} },
    said: { rows: {}, prompts: {} },
    finished: { rows: [], product: false, problem: false },
  };
}

/** In beads, at the square's own place. */
export function pileValue(pile: Pile): number {
  if (pile === EMPTY_PILE) return 0;
  const { bars } = pile;
  let value = 0;
  for (let kind = 1; kind <= 10; kind += 1) value += kind * bars[kind - 1]!;
  return value;
}

/** Σ pile × 10^(row + column): the mat's value in units of 10^origin. */
export function matValue(position: Pick<Position, 'piles'>): bigint {
  let value = 0n;
  for (let row = 0; row < position.piles.length; row += 1)
    for (let column = 0; column < position.piles[row]!.length; column += 1)
      value += BigInt(pileValue(position.piles[row]![column]!)) * 10n ** BigInt(row + column);
  return value;
}
