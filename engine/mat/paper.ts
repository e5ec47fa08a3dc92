import type { Problem } from '../problem.ts';
import type { RefusalCode, Slot } from '../vocabulary.ts';
import type { ActionOf, Line } from './action.ts';
import type { Square } from './geometry.ts';
import type { LineDigits, Paper, Position } from './position.ts';

/** Places that squared paper has: from the mat's lowest to one beyond its highest. */
export function paperPlaces({ mat }: Problem): { least: number; most: number } {
  return { least: mat.origin, most: mat.origin + mat.rows + mat.columns - 1 };
}

/** Rows of the written work: one a multiplier digit; without numbers, one a row of the mat. */
export function writtenRows({ multiplier, mat }: Problem): number {
  return multiplier.digits.length === 0 ? mat.rows : multiplier.digits.length;
}

export function squareKey([row, column]: Square): string {
  return `${row}:${column}`;
}

function withPaper(position: Position, change: Partial<Paper>): Position {
  return { ...position, paper: { ...position.paper, ...change } };
}

function withLine(position: Position, line: Line, digits: LineDigits): Position {
  return withLines(position, { ...position.paper.lines, [line]: digits });
}

function withLines(position: Position, lines: Paper['lines']): Position {
  const { begun, points, squares } = position.paper;
  return { ...position, paper: { lines, begun, points, squares } };
}

function lineOfPaper(problem: Problem, line: Line): boolean {
  if (line === 'product' || line === 'carry:product') return true;
  return Number(line.slice(line.indexOf(':') + 1)) < writtenRows(problem);
}

export function begin(
  problem: Problem,
  position: Position,
  action: ActionOf<'begin'>,
): Position | RefusalCode {
  const rows = writtenRows(problem);
  if (!lineOfPaper(problem, action.line)) return 'offThePaper';
  if (action.row >= rows) return 'nothingThere';
  return withPaper(position, { begun: { ...position.paper.begun, [action.line]: action.row } });
}

export function write(
  problem: Problem,
  position: Position,
  action: ActionOf<'write'>,
): Position | RefusalCode {
  if ('square' in action) {
    const { square, slot, digit, of } = action;
    const written = of === undefined ? { digit } : { digit, of };
    return withSquare(problem, position, square, { slot, written });
  }
  const refused = lineRefusal(problem, position, action);
  if (refused !== null) return refused;
  const digits = { ...position.paper.lines[action.line], [action.place]: action.digit };
  return withLine(position, action.line, digits);
}

function lineRefusal(
  problem: Problem,
  position: Position,
  { line, place }: { readonly line: Line; readonly place: number },
): RefusalCode | null {
  const places = paperPlaces(problem);
  if (place < places.least || place > places.most) return 'offThePaper';
  if (!lineOfPaper(problem, line)) return 'offThePaper';
  const needsRow = line.startsWith('partial:') && writtenRows(problem) > 1;
  return needsRow && position.paper.begun[line] === undefined ? 'lineNotBegun' : null;
}

/** Digits stand on squares only where the mat is written on. */
function withSquare(
  problem: Problem,
  position: Position,
  square: Square,
  { slot, written }: { slot: Slot; written: { digit: number; of?: Square } | null },
): Position | RefusalCode {
  if (position.piles[square[0]]?.[square[1]] === undefined) return 'offTheMat';
  if (problem.stage !== 'cells' && problem.stage !== 'open') return 'offThePaper';
  const key = squareKey(square);
  const { [slot]: _old, ...others } = position.paper.squares[key] ?? {};
  const content = written === null ? others : { ...others, [slot]: written };
  return withPaper(position, { squares: { ...position.paper.squares, [key]: content } });
}

export function rub(
  problem: Problem,
  position: Position,
  action: ActionOf<'rub'>,
): Position | RefusalCode {
  if ('square' in action) {
    const there = position.paper.squares[squareKey(action.square)]?.[action.slot];
    if (there === undefined) return 'nothingThere';
    return withSquare(problem, position, action.square, { slot: action.slot, written: null });
  }
  const { [`${action.place}`]: there, ...others } = position.paper.lines[action.line] ?? {};
  if (there === undefined) return 'nothingThere';
  for (const _ in others) return withLine(position, action.line, others);
  const { [action.line]: _rubbed, ...lines } = position.paper.lines;
  return withLines(position, lines);
}

export function point(
  problem: Problem,
  position: Position,
  action: ActionOf<'point'>,
): Position | RefusalCode {
  const { least, most } = paperPlaces(problem);
  if (action.places > most - least) return 'offThePaper';
  return withPaper(position, { points: { ...position.paper.points, [action.on]: action.places } });
}
