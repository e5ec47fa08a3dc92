import type { Action, Lifted, Line, Square, Work } from '../../engine/child.ts';
import { type Cell, cellKey, squareCell, tileCell } from '../mat/cells.ts';
import { downDiagonal, sameSquare } from '../mat/geometry.ts';
import type { OpenView } from '../mat/open-square.ts';
import type { PaperLine, PaperView } from '../mat/paper.ts';
import type { MatView, SquareView, TileView } from '../mat/view.ts';
import { words } from '../words/words.ts';
import { begunLines, carryLineOf, digitAt } from './pens.ts';
import type { Desk, Tool } from './tool.ts';

type Edge = 'bottom' | 'right';

const isLifted = (work: Work, test: (lifted: Lifted) => boolean): boolean => work.lifted.some(test);

const targetsOf = (work: Work, desk: Desk): readonly Square[] =>
  desk.held?.what === 'pile' ? downDiagonal(desk.held.from, work.problem.mat.columns) : [];

const markedBy = (desk: Desk) => {
  const marks = new Set(desk.hint?.marks.map(cellKey));
  return (cell: Cell) => marks.has(cellKey(cell));
};

const tilesOf = (work: Work, desk: Desk, edge: Edge): TileView[] => {
  const { multiplicand, multiplier } = work.problem;
  const { lowest } = edge === 'bottom' ? multiplicand : multiplier;
  const marked = markedBy(desk);
  const chosen = (index: number) => {
    if (desk.tool === 'fact') return index === desk.fact[edge === 'right' ? 0 : 1];
    const byRow = desk.tool === 'row' || desk.tool === 'write';
    return edge === 'right' && byRow && index === desk.row;
  };
  return work.position.tiles[edge].map((digit, index) => ({
    digit,
    place: lowest + index,
    again: isLifted(work, ({ tile }) => tile?.edge === edge && tile.index === index),
    active: chosen(index) || (desk.slot?.at === edge && desk.slot.index === index),
    marked: marked(tileCell(edge, index)),
  }));
};

/** The square that a question is about, or whose fact is being laid. */
const askedOf = ({ problem }: Work, desk: Desk): Square | null => {
  if (desk.tool === 'fact') return desk.fact;
  const prompt = desk.tool === 'walk' ? problem.prompts[desk.prompt] : undefined;
  return prompt?.ask === 'worth' ? prompt.square : null;
};

/** The square that was given as an answer to the question at hand. */
const answeredOf = ({ position }: Work, desk: Desk): Square | null => {
  const answer = desk.tool === 'walk' ? position.said.prompts[desk.prompt] : undefined;
  return answer === undefined || typeof answer === 'string' ? null : answer;
};

const figuresOf = (work: Work, desk: Desk, square: Square): SquareView['figures'] => {
  const written = work.position.paper.squares[`${square[0]}:${square[1]}`] ?? {};
  const { spot } = desk;
  if (desk.tool !== 'figures' && Object.keys(written).length === 0) return null;
  const pen = spot !== null && 'square' in spot && sameSquare(spot.square, square);
  return {
    own: written.own?.digit ?? null,
    fromRight: written.fromRight?.digit ?? null,
    pen: pen ? spot.slot : null,
  };
};

/** Squares in the hand: a pile to slide, tens to exchange, the one that is opened. */
const inHand = (work: Work, desk: Desk): readonly (Square | null)[] => {
  const { held } = desk;
  const from = held?.what === 'pile' || held?.what === 'tens' ? held.from : null;
  return [from, desk.open, answeredOf(work, desk)];
};

/** A question that is to be looked at again lifts the square that it is about, or that was the answer. */
const askedAgain = (work: Work, desk: Desk): Square | null => {
  const again = isLifted(work, ({ prompt }) => prompt === desk.prompt);
  return again ? (answeredOf(work, desk) ?? askedOf(work, desk)) : null;
};

/** What a child is to look for on the mat. */
const callOf = (work: Work, desk: Desk, asked: Square | null): Cell | null => {
  const [mark] = desk.hint?.marks ?? [];
  if (mark !== undefined) return mark;
  const { square, tile } = work.lifted.find((each) => each.square ?? each.tile) ?? {};
  if (tile !== undefined) return tileCell(tile.edge, tile.index);
  const about = square ?? asked;
  return about === null ? null : squareCell(about);
};

const squareIn = (action: Action): Square | null => {
  if ('to' in action) return action.to;
  return 'square' in action ? action.square : null;
};

const lastWorked = (work: Work): Square | null => {
  const entry = work.log.findLast((each) => each.refused === undefined && squareIn(each.action));
  return entry === undefined ? null : squareIn(entry.action);
};

/** The mat as it lies, with what the child holds, what a hint marks and what is to be looked at again. */
export const matViewOf = (work: Work, desk: Desk): MatView => {
  const { mat, multiplicand, multiplier } = work.problem;
  const towards = desk.held?.what === 'tens' && desk.held.to !== null ? [desk.held.to] : [];
  const targets = [...targetsOf(work, desk), ...towards];
  const marked = markedBy(desk);
  const among = (squares: readonly (Square | null)[], square: Square) =>
    squares.some((each) => sameSquare(each, square));
  const hands = inHand(work, desk);
  const doubted = askedAgain(work, desk);
  const asked = askedOf(work, desk);
  return {
    name: words('mat'),
    shape: mat,
    needed: multiplicand.digits.length + multiplier.digits.length || mat.columns,
    asked,
    call: callOf(work, desk, doubted ?? asked),
    last: lastWorked(work),
    tellsPlaces: work.problem.stage !== 'walk',
    numbers: desk.numbers,
    squares: work.position.piles.map((row, r) =>
      row.map(({ bars }, c) => ({
        bars,
        again:
          isLifted(work, ({ square }) => sameSquare(square ?? null, [r, c])) ||
          sameSquare(doubted, [r, c]),
        target: among(targets, [r, c]),
        held: among(hands, [r, c]),
        marked: marked(squareCell([r, c])),
        figures: figuresOf(work, desk, [r, c]),
      })),
    ),
    tiles: { bottom: tilesOf(work, desk, 'bottom'), right: tilesOf(work, desk, 'right') },
  };
};

const saidOf = (work: Work) =>
  Object.entries(work.position.said.rows)
    .map(([row, answer]) => ({ row: Number(row), answer }))
    .sort((a, b) => a.row - b.row)
    .map((said) => ({
      ...said,
      again: isLifted(work, ({ row, step }) => row === said.row && step.startsWith('said:')),
    }));

/** One place more than the product can need: its length is not given away, and a slip still finds room. */
const places = ({ problem }: Work): number[] => {
  const { mat, multiplicand, multiplier } = problem;
  const needed = multiplicand.digits.length + multiplier.digits.length;
  const length = needed === 0 ? mat.columns : Math.min(mat.columns, needed + 1);
  return Array.from({ length }, (_, i) => mat.origin + length - 1 - i);
};

const lineOf = (work: Work, desk: Desk, line: Line, row: number | null): PaperLine => {
  const { points } = work.position.paper;
  const { origin } = work.problem.mat;
  const pointed = points.product === undefined ? null : origin + points.product;
  const pointAt = line === 'product' ? pointed : null;
  const pointAgain = line === 'product' && isLifted(work, ({ step }) => step === 'point');
  const at = (spot: Desk['spot'], place: number) =>
    spot !== null && 'line' in spot && spot.line === line && spot.place === place;
  const carries = carryLineOf(work.problem, line);
  return {
    line,
    row,
    cells: places(work).map((place) => ({
      place,
      digit: digitAt(work, { line, place }),
      carried: digitAt(work, { line: carries, place }),
      again:
        (pointAgain && place === (pointAt ?? origin)) ||
        isLifted(work, ({ line: on }) => on?.line === line && on.place === place),
      active: at(desk.spot, place) && !work.finished.problem,
      marked: at(desk.hint?.spot ?? null, place),
      point: place === pointAt && pointAt > origin,
    })),
  };
};

/** Where the pen is, else the line of the chosen row while rows are written. */
const lineNow = ({ spot, row, tool }: Desk, rows: readonly { line: Line; row: number }[]): Line => {
  if (spot !== null && 'line' in spot) return spot.line;
  if (tool !== 'write') return 'product';
  return rows.find((each) => each.row === row)?.line ?? 'product';
};

export const paperViewOf = (work: Work, desk: Desk, tools: readonly Tool[]): PaperView => {
  const rows = tools.some(({ id }) => id === 'write') ? begunLines(work) : [];
  return {
    multiplicand: work.problem.multiplicand.text,
    multiplier: work.problem.multiplier.text,
    said: saidOf(work),
    rows: rows.map(({ line, row }) => lineOf(work, desk, line, row)),
    product: lineOf(work, desk, 'product', null),
    now: lineNow(desk, rows),
  };
};

/** The opened square and the one to its left, which an exchange goes to. */
export const openViewOf = (work: Work, desk: Desk, [row, column]: Square): OpenView => {
  const { mat } = work.problem;
  const at = (c: number) => ({
    square: [row, c] as Square,
    place: mat.origin + row + c,
    bars: work.position.piles[row]?.[c]?.bars ?? [],
  });
  return {
    ...at(column),
    left: column + 1 < mat.columns ? at(column + 1) : null,
    numbers: desk.numbers,
    again: isLifted(work, ({ square }) => sameSquare(square ?? null, [row, column])),
  };
};
