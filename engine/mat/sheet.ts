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

/** The digits of one line by place from the origin, as long as the paper is wide; a line without digits is none. */
export type Digits = readonly (number | undefined)[];

/** The digit that stands on a line at a place from the origin. */
export function digitOn({ lines }: Sheet, line: Line, at: number): number | undefined {
  return lines[lineIndex(line)]?.[at];
}

/** Where digits stand on the line with this index, from the origin, the lowest first. */
export function placesOn({ lines }: Sheet, line: number): number[] {
  const places: number[] = [];
  const written = lines[line] ?? [];
  for (let at = 0; at < written.length; at += 1) if (written[at] !== undefined) places.push(at);
  return places;
}

/** A digit on a square, and the action that wrote it. `of`: the pair that it says it belongs to. */
export interface Entry {
  readonly digit: number;
  readonly of: Square | undefined;
  readonly square: Square;
  readonly slot: Slot;
  readonly act: number;
}

/** In place of an action: paper as others see it does not tell who wrote what. */
export const NO_ACT = -1;

/** A square that was written on. */
export interface SquareContent {
  readonly own: Entry | undefined;
  readonly fromRight: Entry | undefined;
  /** So many other squares were written on before it. */
  readonly earlier: number;
}

/** A row of squares by column, as far as it was written on; replaced whenever something else is written there. */
export type SquareLine = readonly (SquareContent | undefined)[];

/** Paper as the judge works with it: small indexes for texts, so that one digit more copies little. Never changed. */
export interface Sheet {
  /** By `lineIndex`. */
  readonly lines: readonly (Digits | undefined)[];
  /** Indexes of the lines that hold digits, in the order in which `Paper` keeps them. */
  readonly kept: readonly number[];
  readonly begun: Paper['begun'];
  readonly points: Paper['points'];
  /** By row, then by column; a row that was never written on is none. */
  readonly squares: readonly (SquareLine | undefined)[];
  /** How many squares were ever written on. */
  readonly touched: number;
  /** What was written on the lines of the rows and on their carries, and what on those of the product: the last stroke. */
  readonly strokes: Stroke | undefined;
  readonly productStrokes: Stroke | undefined;
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
  touched: 0,
  strokes: undefined,
  productStrokes: undefined,
};

interface Mat extends Size {
  readonly origin: number;
}

/** A line with one digit more, or another in its place; `at`: its place from the origin. */
export function withDigit(
  line: Digits | undefined,
  at: number,
  digit: number,
  { rows, columns }: Size,
): Digits {
  const digits = line === undefined ? blank<number>(rows + columns + 1) : line.slice();
  digits[at] = digit;
  return digits;
}

/** A line without one of its digits; null: that was its last. */
export function withoutDigit(line: Digits, at: number): Digits | null {
  const digits = line.slice();
  digits[at] = undefined;
  return digits.some((digit) => digit !== undefined) ? digits : null;
}

/** So many nothings. */
export function blank<T>(length: number): (T | undefined)[] {
  return NOTHING.slice(0, length);
}

/** As many as any paper has. */
export const MOST_PLACES = MAT_LIMITS.rows.most + MAT_LIMITS.columns.most + 1;
/** A list that is pushed to takes more room than it needs. */
const NOTHING: readonly undefined[] = Array.from({ length: MOST_PLACES }, () => undefined);

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
  let { squares } = EMPTY_SHEET;
  const keys = Object.keys(paper.squares);
  for (let earlier = 0; earlier < keys.length; earlier += 1) {
    const key = keys[earlier]!;
    const [row, column] = key.split(':').map(Number);
    const square: Square = [row!, column!];
    squares = squaresWith(mat, squares, square, contentOf(square, paper.squares[key]!, earlier));
  }
  const { begun, points } = paper;
  const { strokes, productStrokes } = EMPTY_SHEET;
  return { lines, kept, begun, points, squares, touched: keys.length, strokes, productStrokes };
}

/** Paper tells which of the two digits was written first: both before whatever is written next. */
function contentOf(square: Square, shown: ShownContent, earlier: number): SquareContent {
  const slots = Object.keys(shown) as Slot[];
  const entry = (slot: Slot): Entry | undefined => {
    const there = shown[slot];
    if (there === undefined) return undefined;
    return {
      digit: there.digit,
      of: there.of,
      square,
      slot,
      act: NO_ACT - slots.length + slots.indexOf(slot),
    };
  };
  return { own: entry('own'), fromRight: entry('fromRight'), earlier };
}

/** The squares with something else on one of them. */
export function squaresWith(
  { rows }: Size,
  squares: Sheet['squares'],
  [row, column]: Square,
  content: SquareContent,
): Sheet['squares'] {
  const lines = squares.length === 0 ? blank<SquareLine>(rows) : squares.slice();
  lines[row] = lineWith(lines[row] ?? NO_SQUARES, column, content);
  return lines;
}

const NO_SQUARES: SquareLine = [];

function lineWith(line: SquareLine, column: number, content: SquareContent): SquareLine {
  const wide = Math.max(line.length, column + 1);
  const now = new Array<SquareContent | undefined>(wide);
  for (let at = 0; at < wide; at += 1) now[at] = line[at];
  now[column] = content;
  return now;
}

/** How `Paper` names a square. */
export function squareKey(row: number, column: number): string {
  return KEYS[row * WIDEST + column]!;
}

const WIDEST = MAT_LIMITS.columns.most;
const KEYS = Array.from(
  { length: MAT_LIMITS.rows.most * WIDEST },
  (_, index) => `${Math.floor(index / WIDEST)}:${index % WIDEST}`,
);

/** How a sheet shows. */
export function paperOf({ origin }: Mat, sheet: Sheet): Paper {
  const lines: Record<string, Record<string, number>> = {};
  for (const index of sheet.kept) {
    const written = sheet.lines[index]!;
    const shown: Record<string, number> = {};
    for (const at of placesOn(sheet, index)) shown[origin + at] = written[at]!;
    lines[LINES[index]!] = shown;
  }
  return { lines, begun: sheet.begun, points: sheet.points, squares: shownSquares(sheet) };
}

type ShownContent = Paper['squares'][string];

function shownSquares({ squares, touched }: Sheet): Paper['squares'] {
  const order = new Array<number>(touched).fill(0);
  for (let row = 0; row < squares.length; row += 1) {
    const line = squares[row];
    if (line === undefined) continue;
    for (let column = 0; column < line.length; column += 1) {
      const content = line[column];
      if (content !== undefined) order[content.earlier] = row * WIDEST + column;
    }
  }
  const shown: Record<string, ShownContent> = {};
  for (let index = 0; index < touched; index += 1) {
    const at = order[index]!;
    shown[KEYS[at]!] = shownContent(squares[Math.floor(at / WIDEST)]![at % WIDEST]!);
  }
  return shown;
}

/** What was there already comes first. */
function shownContent({ own, fromRight }: SquareContent): ShownContent {
  if (own === undefined) return fromRight === undefined ? {} : { fromRight: shownDigit(fromRight) };
  if (fromRight === undefined) return { own: shownDigit(own) };
  return own.act < fromRight.act
    ? { own: shownDigit(own), fromRight: shownDigit(fromRight) }
    : { fromRight: shownDigit(fromRight), own: shownDigit(own) };
}

function shownDigit({ digit, of }: Entry): SquareDigit {
  return of === undefined ? { digit } : { digit, of };
}
