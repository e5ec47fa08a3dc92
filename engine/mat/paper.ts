import type { Problem } from '../problem.ts';
import type { RefusalCode, Slot } from '../vocabulary.ts';
import type { ActionOf, Line } from './action.ts';
import { onMat, type Size, type Square } from './geometry.ts';
import {
  type Digits,
  type Entry,
  FIRST_CARRIES,
  lastStroke,
  lineIndex,
  PRODUCT,
  type Sheet,
  squaresWith,
  withDigit,
  withoutDigit,
} from './sheet.ts';

/** What is done on paper. Squared paper has a place for each of the mat's, and one beyond its highest. */
export type PaperAction =
  | ActionOf<'begin'>
  | ActionOf<'write'>
  | ActionOf<'rub'>
  | ActionOf<'point'>;

/** Rows of the written work: one a multiplier digit; without numbers, one a row of the mat. */
export function writtenRows({ multiplier, mat }: Problem): number {
  return multiplier.digits.length === 0 ? mat.rows : multiplier.digits.length;
}

/** The sheet after the action, or why paper could not bear it. */
export function onSheet(
  problem: Problem,
  sheet: Sheet,
  action: PaperAction,
  act: number,
): Sheet | RefusalCode {
  switch (action.do) {
    case 'begin':
      return begin(problem, sheet, action);
    case 'write':
      return 'square' in action
        ? writeSquare(problem, sheet, action, act)
        : writeLine(problem, sheet, action, act);
    case 'rub':
      return 'square' in action
        ? rubSquare(problem, sheet, action)
        : rubLine(problem, sheet, action);
    case 'point':
      return point(problem, sheet, action);
  }
}

/** Rows have a line and a line of carries each; the product has them always. */
function isOnPaper(problem: Problem, line: number): boolean {
  return line >= PRODUCT || line % FIRST_CARRIES < writtenRows(problem);
}

function begin(problem: Problem, sheet: Sheet, action: ActionOf<'begin'>): Sheet | RefusalCode {
  if (!isOnPaper(problem, lineIndex(action.line))) return 'offThePaper';
  if (action.row >= writtenRows(problem)) return 'nothingThere';
  const { lines, kept, points, squares, touched, strokes, productStrokes } = sheet;
  const begun = { ...sheet.begun, [action.line]: action.row };
  return { lines, kept, begun, points, squares, touched, strokes, productStrokes };
}

type OnLine<A> = Extract<A, { line: Line }>;
type OnSquare<A> = Exclude<A, { line: Line }>;

function writeLine(
  problem: Problem,
  sheet: Sheet,
  action: OnLine<ActionOf<'write'>>,
  act: number,
): Sheet | RefusalCode {
  const { mat } = problem;
  const index = lineIndex(action.line);
  const at = action.place - mat.origin;
  if (at < 0 || at >= mat.rows + mat.columns || !isOnPaper(problem, index)) return 'offThePaper';
  const needsRow = index < FIRST_CARRIES && writtenRows(problem) > 1;
  if (needsRow && sheet.begun[action.line] === undefined) return 'lineNotBegun';
  const stroke = { line: index, at, act, before: lastStroke(sheet, index) };
  return withLine(sheet, index, withDigit(sheet.lines[index], at, action.digit, mat), stroke);
}

function withLine(
  sheet: Sheet,
  index: number,
  line: Digits | undefined,
  stroke = lastStroke(sheet, index),
): Sheet {
  const lines = sheet.lines.slice();
  lines[index] = line;
  let { kept } = sheet;
  if (line === undefined) kept = kept.filter((each) => each !== index);
  else if (sheet.lines[index] === undefined) kept = [...kept, index];
  const { begun, points, squares, touched } = sheet;
  const strokes = index < PRODUCT ? stroke : sheet.strokes;
  const productStrokes = index < PRODUCT ? sheet.productStrokes : stroke;
  return { lines, kept, begun, points, squares, touched, strokes, productStrokes };
}

/** Digits stand on squares only where the mat is written on. */
function writeSquare(
  problem: Problem,
  sheet: Sheet,
  { square, slot, digit, of }: OnSquare<ActionOf<'write'>>,
  act: number,
): Sheet | RefusalCode {
  if (!onMat(problem.mat, square)) return 'offTheMat';
  if (problem.stage !== 'cells' && problem.stage !== 'open') return 'offThePaper';
  return withEntry(problem.mat, sheet, square, slot, { digit, of, square, slot, act });
}

function withEntry(
  mat: Size,
  sheet: Sheet,
  square: Square,
  slot: Slot,
  entry: Entry | undefined,
): Sheet {
  const there = sheet.squares[square[0]]?.[square[1]];
  const squares = squaresWith(mat, sheet.squares, square, {
    own: slot === 'own' ? entry : there?.own,
    fromRight: slot === 'own' ? there?.fromRight : entry,
    earlier: there?.earlier ?? sheet.touched,
  });
  const touched = there === undefined ? sheet.touched + 1 : sheet.touched;
  const { lines, kept, begun, points, strokes, productStrokes } = sheet;
  return { lines, kept, begun, points, squares, touched, strokes, productStrokes };
}

function rubSquare(
  { mat }: Problem,
  sheet: Sheet,
  { square, slot }: OnSquare<ActionOf<'rub'>>,
): Sheet | RefusalCode {
  const there = onMat(mat, square) ? sheet.squares[square[0]]?.[square[1]] : undefined;
  if (there?.[slot] === undefined) return 'nothingThere';
  return withEntry(mat, sheet, square, slot, undefined);
}

function rubLine(
  { mat }: Problem,
  sheet: Sheet,
  action: OnLine<ActionOf<'rub'>>,
): Sheet | RefusalCode {
  const index = lineIndex(action.line);
  const line = sheet.lines[index];
  const at = action.place - mat.origin;
  if (line?.[at] === undefined) return 'nothingThere';
  return withLine(sheet, index, withoutDigit(line, at) ?? undefined);
}

function point(problem: Problem, sheet: Sheet, action: ActionOf<'point'>): Sheet | RefusalCode {
  if (action.places >= problem.mat.rows + problem.mat.columns) return 'offThePaper';
  const { lines, kept, begun, squares, touched, strokes, productStrokes } = sheet;
  const points = { ...sheet.points, [action.on]: action.places };
  return { lines, kept, begun, points, squares, touched, strokes, productStrokes };
}
