import type { Line, Problem, Slot, Square, Work } from '../../engine/child.ts';
import { sentence } from './says.ts';
import type { At, Spot } from './tool.ts';

type LineSpot = Extract<Spot, { line: unknown }>;

/** Small figures carried into a line; a single row of paper is its own product. */
export const carryLineOf = ({ stage, multiplier }: Problem, line: Line): Line => {
  if (line !== 'product') return line.replace('partial', 'carry') as Line;
  return stage === 'paper' && multiplier.digits.length === 1 ? 'carry:0' : 'carry:product';
};

/** The lines that are begun, in the order in which they stand on the paper. */
export const begunLines = ({ position }: Work): { line: Line; row: number }[] =>
  Object.entries(position.paper.begun)
    .map(([line, row]) => ({ line: line as Line, row }))
    .sort((a, b) => a.line.localeCompare(b.line));

export const digitAt = (work: Work, { line, place }: LineSpot): number | null =>
  work.position.paper.lines[line]?.[String(place)] ?? null;

/** From right to left where the digit to the right stands already, as one calculates; else as one reads. */
const nextOnLine = (at: At, { line, place }: LineSpot): Spot | null => {
  const { origin } = at.work.problem.mat;
  const right = { line, place: place - 1 };
  const leftwards = place === origin || digitAt(at.work, right) !== null;
  const to = leftwards ? { line, place: place + 1 } : right;
  return digitAt(at.work, to) === null ? to : null;
};

/** After the units their tens, on the square to the left; after the tens the units that follow them. */
const nextOnSquares = (
  at: At,
  { square: [row, column], slot }: { square: Square; slot: Slot },
): Spot | null => {
  if (slot === 'fromRight') return { square: [row, column], slot: 'own' };
  if (column + 1 >= at.work.problem.mat.columns) return null;
  return { square: [row, column + 1], slot: 'fromRight' };
};

const writeFigure = (at: At, spot: LineSpot, digit: number): void => {
  const line = carryLineOf(at.work.problem, spot.line);
  if (at.do({ do: 'write', line, place: spot.place, digit })) at.set({ carries: false });
};

/** Writes where the pen is, and moves it on. */
export const writeDigit = (at: At, digit: number): void => {
  const { spot, carries } = at.desk;
  if (spot === null) at.set({ message: sentence('pressDigit') });
  else if ('square' in spot) {
    if (at.do({ do: 'write', ...spot, digit })) at.set({ spot: nextOnSquares(at, spot) });
  } else if (carries) writeFigure(at, spot, digit);
  else if (at.do({ do: 'write', ...spot, digit })) at.set({ spot: nextOnLine(at, spot) });
};

/** The digit, or what was carried to it where no digit stands or the small figure is meant. */
export const rubDigit = (at: At): void => {
  const { spot, carries } = at.desk;
  if (spot === null) return;
  if ('square' in spot) at.do({ do: 'rub', ...spot });
  else {
    const figure = { ...spot, line: carryLineOf(at.work.problem, spot.line) };
    const small = carries || (digitAt(at.work, spot) === null && digitAt(at.work, figure) !== null);
    at.do({ do: 'rub', ...(small ? figure : spot) });
  }
};

/** The point comes after the digit that is chosen. */
export const setPoint = (at: At): void => {
  const { spot } = at.desk;
  if (spot === null || 'square' in spot || spot.line !== 'product')
    at.set({ message: sentence('pressPointAfter') });
  else at.do({ do: 'point', on: 'product', places: spot.place - at.work.problem.mat.origin });
};

/** Touching a digit of the multiplier begins its line, or goes back to it. */
export const chooseRow = (at: At, row: number): void => {
  const { work } = at;
  const own = begunLines(work).find((begun) => begun.row === row);
  const line: Line = own?.line ?? `partial:${begunLines(work).length}`;
  if (own === undefined && !at.do({ do: 'begin', line, row })) return;
  at.set({ row, spot: { line, place: work.problem.mat.origin }, carries: false });
};
