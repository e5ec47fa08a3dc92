import type { Slot } from '../vocabulary.ts';
import type { Line } from './action.ts';
import { MAT_LIMITS, type Size, type Square } from './geometry.ts';
import type { Paper, SquareDigit } from './position.ts';

/** All lines of a sheet, each at its index. */
export const LINES: readonly Line[] = [
  'partial:0',
  'partial:1',
  'partial:2',
  'partial:3',
  'partial:4',
  'partial:5',
  'carry:0',
  'carry:1',
  'carry:2',
  'carry:3',
  'carry:4',
  'carry:5',
  'product',
  'carry:product',
];

/** Indexes of lines: that of a row's carries, of the product, of its carries. */
export const FIRST_CARRIES = 6;
export const PRODUCT = 12;
export const PRODUCT_CARRIES = 13;

const INDEX: ReadonlyMap<string, number> = new Map(LINES.map((line, index) => [line, index]));

/** Where a line stands in `Sheet.lines`. */
export function lineIndex(line: Line): number {
  return INDEX.get(line)!;
}

/** The digits of one line; a line without digits is none. */
export interface WrittenLine {
  /** By place from the origin, as long as the paper is wide. */
  readonly digits: readonly (number | undefined)[];
  /** Where they stand, from the origin, in the order in which `LineDigits` keeps its places. */
  readonly places: readonly number[];
}

/** The digit that stands on a line at a place from the origin. */
export function digitOn({ lines }: Sheet, line: Line, at: number): number | undefined {
  return lines[lineIndex(line)]?.digits[at];
}

/** Where digits stand on a line, from the origin, in the order in which places are kept. */
export function placesOn({ lines }: Sheet, line: Line): readonly number[] {
  return lines[lineIndex(line)]?.places ?? NO_PLACES;
}

const NO_PLACES: readonly number[] = [];

export type SquareContent = Readonly<Partial<Record<Slot, SquareDigit>>>;
export type SquareLine = readonly (SquareContent | undefined)[];

/** Paper as the judge works with it: small indexes for texts, so that one digit more copies little. Never changed. */
export interface Sheet {
  /** By `lineIndex`. */
  readonly lines: readonly (WrittenLine | undefined)[];
  /** Indexes of the lines that hold digits, in the order in which `Paper` keeps them. */
  readonly kept: readonly number[];
  readonly begun: Paper['begun'];
  readonly points: Paper['points'];
  /** By row, then by column; a row that was never written on is none. */
  readonly squares: readonly (SquareLine | undefined)[];
  /** Every square that was ever written on, the last that `Paper` keeps first. */
  readonly touched: Touched | null;
  /** What was written on the lines of the rows and on their carries, and what on those of the product: the last stroke. */
  readonly strokes: Stroke | undefined;
  readonly productStrokes: Stroke | undefined;
}

/** A square that was written on, and those that were written on before it: one more copies none of them. */
export interface Touched {
  readonly square: Square;
  readonly before: Touched | null;
  /** Of all of them. */
  readonly count: number;
}

/** One digit written on a line, by which action, and what was written before it; rubbing out takes none of it back. */
export interface Stroke {
  readonly line: number;
  /** Its place from the origin. */
  readonly at: number;
  readonly act: number;
  readonly before: Stroke | undefined;
}

/** The last stroke of those on the line and on others beside it. */
export function lastStroke(sheet: Sheet, line: number): Stroke | undefined {
  return line < PRODUCT ? sheet.strokes : sheet.productStrokes;
}

/** The action that last wrote at a place of a line. */
export function writtenBy(sheet: Sheet, line: number, at: number): number | undefined {
  let stroke = lastStroke(sheet, line);
  while (stroke !== undefined && (stroke.line !== line || stroke.at !== at)) stroke = stroke.before;
  return stroke?.act;
}

export const EMPTY_SHEET: Sheet = {
  lines: LINES.map(() => undefined),
  kept: [],
  begun: {},
  points: {},
  squares: [],
  touched: null,
  strokes: undefined,
  productStrokes: undefined,
};

interface Mat extends Size {
  readonly origin: number;
}

/** A line with one digit more, or another in its place; `at`: its place from the origin. */
export function withDigit(
  line: WrittenLine | undefined,
  at: number,
  digit: number,
  { rows, columns, origin }: Mat,
): WrittenLine {
  const digits = line === undefined ? blank<number>(rows + columns + 1) : line.digits.slice();
  const is = digits[at] !== undefined;
  digits[at] = digit;
  if (line === undefined) return { digits, places: [at] };
  return { digits, places: is ? line.places : placedAmong(line.places, at, -origin) };
}

/** Places of whole numbers are kept from the lowest up, decimals after them as they were written. */
function placedAmong(places: readonly number[], at: number, units: number): readonly number[] {
  const more = places.slice();
  more.push(at);
  if (at < units) return more;
  let index = places.length;
  for (; index > 0; index -= 1) {
    const below = places[index - 1]!;
    if (below >= units && below < at) break;
    more[index] = below;
  }
  more[index] = at;
  return more;
}

/** A line without one of its digits; null: that was its last. */
export function withoutDigit(line: WrittenLine, at: number): WrittenLine | null {
  if (line.places.length === 1) return null;
  const digits = line.digits.slice();
  digits[at] = undefined;
  return { digits, places: line.places.filter((each) => each !== at) };
}

function blank<T>(length: number): (T | undefined)[] {
  const list: (T | undefined)[] = [];
  for (let at = 0; at < length; at += 1) list.push(undefined);
  return list;
}

/** The sheet that shows as this paper. */
export function sheetOf(mat: Mat, paper: Paper): Sheet {
  const lines = EMPTY_SHEET.lines.slice();
  const kept = Object.keys(paper.lines).map((line) => lineIndex(line as Line));
  for (const index of kept) {
    const written = paper.lines[LINES[index]!]!;
    for (const place of Object.keys(written)) {
      const at = Number(place) - mat.origin;
      lines[index] = withDigit(lines[index], at, written[place]!, mat);
    }
  }
  let { squares, touched } = EMPTY_SHEET;
  for (const key of Object.keys(paper.squares)) {
    const [row, column] = key.split(':').map(Number);
    touched = withTouched(touched, [row!, column!]);
    squares = squaresWith(mat, squares, touched.square, paper.squares[key]!);
  }
  const { begun, points } = paper;
  const { strokes, productStrokes } = EMPTY_SHEET;
  return { lines, kept, begun, points, squares, touched, strokes, productStrokes };
}

export function withTouched(before: Touched | null, square: Square): Touched {
  return { square, before, count: (before?.count ?? 0) + 1 };
}

/** The squares with something else on one of them. */
export function squaresWith(
  { rows, columns }: Size,
  squares: Sheet['squares'],
  [row, column]: Square,
  content: SquareContent,
): Sheet['squares'] {
  const lines = squares.length === 0 ? blank<SquareLine>(rows) : squares.slice();
  const line = lines[row]?.slice() ?? blank<SquareContent>(columns);
  line[column] = content;
  lines[row] = line;
  return lines;
}

/** How `Paper` names a square. */
export function squareKey(square: Square): string {
  return `${square[0]}:${square[1]}`;
}

const KEYS = Array.from({ length: MAT_LIMITS.rows.most }, (_, row) =>
  Array.from({ length: MAT_LIMITS.columns.most }, (__, column) => squareKey([row, column])),
);

/** How a sheet shows. */
export function paperOf({ origin }: Mat, sheet: Sheet): Paper {
  const lines: Record<string, Record<string, number>> = {};
  for (const index of sheet.kept) {
    const { digits, places } = sheet.lines[index]!;
    const shown: Record<string, number> = {};
    for (const at of places) shown[origin + at] = digits[at]!;
    lines[LINES[index]!] = shown;
  }
  const touched: Square[] = [];
  for (let last = sheet.touched; last !== null; last = last.before) touched.push(last.square);
  const squares: Record<string, SquareContent> = {};
  for (let index = touched.length - 1; index >= 0; index -= 1) {
    const [row, column] = touched[index]!;
    squares[KEYS[row]![column]!] = sheet.squares[row]![column]!;
  }
  return { lines, begun: sheet.begun, points: sheet.points, squares };
}
