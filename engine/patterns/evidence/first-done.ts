import type { Action, ActionOf, Line } from '../../mat/action.ts';
import type { Square } from '../../mat/geometry.ts';
import type { Problem } from '../../problem.ts';
import type { Edge } from '../../vocabulary.ts';
import type { DoneWork } from '../done.ts';

/** Digits by place, counted from the mat's lowest; as long as the highest place that has one asks for. */
export type PlaceDigits = readonly (number | undefined)[];

/** Digits as they were first written on a line. */
export interface FirstOnLine {
  readonly digits: PlaceDigits;
  /** In the order in which they were written. */
  readonly places: readonly number[];
}

export const NOTHING_WRITTEN: FirstOnLine = { digits: [], places: [] };

export type OnSquare = Extract<ActionOf<'write'>, { square: Square }>;

/** What was first laid and first written: what is mended later stays evidence. */
export interface FirstDone {
  /** null: nothing was ever laid there. */
  readonly tiles: Readonly<Record<Edge, (number | null)[]>>;
  readonly lines: Map<Line, { readonly digits: (number | undefined)[]; readonly places: number[] }>;
  /** All that was written on squares. */
  readonly squares: OnSquare[];
}

export function nothingDone({ mat }: Problem): FirstDone {
  const tiles = {
    bottom: new Array<null>(mat.columns).fill(null),
    right: new Array<null>(mat.rows).fill(null),
  };
  return { tiles, lines: new Map(), squares: [] };
}

/** The log gone through once. */
export function firstDone({ problem, log }: DoneWork): FirstDone {
  const first = nothingDone(problem);
  for (let index = 0; index < log.length; index += 1) {
    const { action, refused } = log[index]!;
    if (refused === undefined) noteFirst(first, problem, action);
  }
  return first;
}

export function noteFirst(first: FirstDone, { mat }: Problem, action: Action): void {
  if (action.do === 'layTile') first.tiles[action.edge][action.index] ??= action.digit;
  else if (action.do !== 'write') return;
  else if ('square' in action) first.squares.push(action);
  else noteOnLine(first, action.line, action.place - mat.origin, action.digit);
}

function noteOnLine({ lines }: FirstDone, line: Line, at: number, digit: number): void {
  let own = lines.get(line);
  if (own === undefined) {
    own = { digits: [], places: [] };
    lines.set(line, own);
  }
  if (own.digits[at] !== undefined) return;
  own.digits[at] = digit;
  own.places.push(at);
}

export function firstOn({ lines }: FirstDone, line: Line): FirstOnLine {
  return lines.get(line) ?? NOTHING_WRITTEN;
}

/** What stands on a line in the end, by place from the mat's lowest, as far as its highest digit. */
export function standingOn({ problem, position }: DoneWork, line: Line): (number | null)[] {
  const standing: (number | null)[] = [];
  const digits = position.paper.lines[line] ?? {};
  const { rows, columns, origin } = problem.mat;
  for (let at = 0; at <= rows + columns; at += 1) {
    const digit = digits[origin + at];
    if (digit === undefined) continue;
    while (standing.length < at) standing.push(null);
    standing.push(digit);
  }
  return standing;
}

/** Whether the child says that the product, and so everything, is there. */
export function isOver({ position }: DoneWork): boolean {
  return position.finished.product || position.finished.problem;
}
