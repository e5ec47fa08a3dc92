import type { Line } from '../../mat/action.ts';
import type { DoneWork } from '../done.ts';

/** Digits by place, counted from the mat's lowest. */
export type PlaceDigits = ReadonlyMap<number, number>;

/** What was first written on a line: what is mended later stays evidence. */
export interface PaperSeen {
  readonly first: (line: Line) => PlaceDigits;
  /** What stands there in the end. */
  readonly standing: (line: Line) => PlaceDigits;
}

const NONE: PlaceDigits = new Map();

export function paperSeen(work: DoneWork): PaperSeen {
  const { origin } = work.problem.mat;
  const lines = new Map<Line, Map<number, number>>();
  for (const { action, refused } of work.log) {
    if (refused !== undefined || action.do !== 'write' || !('line' in action)) continue;
    const digits = lines.get(action.line) ?? new Map<number, number>();
    lines.set(action.line, digits);
    const at = action.place - origin;
    if (!digits.has(at)) digits.set(at, action.digit);
  }
  const standing = (line: Line): PlaceDigits => {
    const digits = Object.entries(work.position.paper.lines[line] ?? {});
    return new Map(digits.map(([place, digit]) => [Number(place) - origin, digit]));
  };
  return { first: (line) => lines.get(line) ?? NONE, standing };
}

export function topOf(digits: PlaceDigits): number {
  return Math.max(-1, ...digits.keys());
}

/** Whether the child says that the product, and so everything, is there. */
export function isOver({ position }: DoneWork): boolean {
  return position.finished.product || position.finished.problem;
}
