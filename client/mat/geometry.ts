import type { Square } from '../../engine/child.ts';

/** Lengths in CSS pixels. `pans`: the mat is wider than its frame and moves under it. */
export interface MatBox {
  readonly square: number;
  readonly pans: boolean;
}

interface Room {
  readonly width: number;
  readonly height: number;
  readonly rows: number;
  readonly columns: number;
  /** Columns that the problem at hand needs; they are kept in view when the mat has to pan. */
  readonly needed: number;
}

/** Smallest side of a square that a finger hits surely (WCAG 2.2, 2.5.5 asks 44). */
const LEAST = 44;
const MOST = 96;
/** The strips that hold tiles, right and below; the space between squares; the cloth's border and fringe. */
export const EDGE = { right: 46, bottom: 60 } as const;
export const GAP = 3;
const BORDER = 46;

/** The largest square that shows the whole mat; where that is below a finger's width, the mat pans. */
export const fitMat = (room: Room): MatBox => {
  const across = (columns: number) => (room.width - EDGE.right - BORDER) / columns - GAP;
  const high = (room.height - EDGE.bottom - BORDER) / room.rows - GAP;
  const whole = Math.floor(Math.min(across(room.columns), high, MOST));
  if (whole >= LEAST) return { square: whole, pans: false };
  const part = Math.floor(Math.min(across(Math.min(room.needed, room.columns)), high, MOST));
  return { square: Math.max(LEAST, Math.min(part, 72)), pans: true };
};

/** A place under the pointer: its distance decides whether a drop there is meant. */
export interface Spot<T> {
  readonly target: T;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

const outside = (value: number, from: number, size: number) =>
  Math.max(from - value, 0, value - from - size);

/** The spot under or nearest to a point, forgiving up to `reach` pixels beside it; null when nothing is near. */
export const nearest = <T>(
  spots: readonly Spot<T>[],
  x: number,
  y: number,
  reach: number,
): T | null => {
  let best: T | null = null;
  let least = reach;
  for (const spot of spots) {
    const away = Math.hypot(outside(x, spot.left, spot.width), outside(y, spot.top, spot.height));
    if (away < least) {
      least = away;
      best = spot.target;
    }
    if (away === 0) return spot.target;
  }
  return best;
};

/** Squares of the same place, lower than the given one: where a pile may slide to. */
export const downDiagonal = ([row, column]: Square, columns: number): Square[] => {
  const squares: Square[] = [];
  for (let down = 1; down <= row && column + down < columns; down += 1)
    squares.push([row - down, column + down]);
  return squares;
};

export const sameSquare = (a: Square | null, b: Square | null): boolean =>
  a !== null && b !== null && a[0] === b[0] && a[1] === b[1];
