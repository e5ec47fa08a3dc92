import type { Line } from '../../mat/action.ts';
import type { DoneWork } from '../done.ts';

/** Digits by place, counted from the mat's lowest; as long as the highest place that has one asks for. */
export type PlaceDigits = readonly (number | undefined)[];

/** What was first written on a line: what is mended later stays evidence. */
export interface PaperSeen {
  readonly first: (line: Line) => PlaceDigits;
  /** Small figures, in the order in which they were written. */
  readonly notes: (line: Line) => ReadonlyMap<number, number>;
}

interface FirstOnLine {
  readonly digits: (number | undefined)[];
  /** In the order in which they were written. */
  readonly places: number[];
}

const NONE: PlaceDigits = [];
export const NO_NOTES: ReadonlyMap<number, number> = new Map();

export function paperSeen({ problem, log }: DoneWork): PaperSeen {
  const { origin } = problem.mat;
  const lines: Record<string, FirstOnLine | undefined> = {};
  for (const { action, refused } of log) {
    if (refused !== undefined || action.do !== 'write' || !('line' in action)) continue;
    lines[action.line] ??= { digits: [], places: [] };
    const { digits, places } = lines[action.line]!;
    const at = action.place - origin;
    if (digits[at] !== undefined) continue;
    digits[at] = action.digit;
    places.push(at);
  }
  return {
    first: (line) => lines[line]?.digits ?? NONE,
    notes(line) {
      const own = lines[line];
      return own === undefined ? NO_NOTES : new Map(own.places.map((at) => [at, own.digits[at]!]));
    },
  };
}

/** What stands on a line in the end. */
export function standingOn({ problem, position }: DoneWork, line: Line): PlaceDigits {
  const standing: (number | undefined)[] = [];
  const digits = position.paper.lines[line];
  for (const place in digits) standing[Number(place) - problem.mat.origin] = digits[place];
  return standing;
}

/** Whether the child says that the product, and so everything, is there. */
export function isOver({ position }: DoneWork): boolean {
  return position.finished.product || position.finished.problem;
}
