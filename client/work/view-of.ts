import type { Lifted, Square, Work } from '../../engine/child.ts';
import { type Cell, cellKey, squareCell, tileCell } from '../mat/cells.ts';
import { downDiagonal, sameSquare } from '../mat/geometry.ts';
import type { OpenView } from '../mat/open-square.ts';
import type { PaperView } from '../mat/paper.ts';
import type { MatView, TileView } from '../mat/view.ts';
import { words } from '../words/words.ts';
import type { Desk } from './desk.ts';

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
  const chosenRow = (index: number) =>
    edge === 'right' && desk.tool === 'row' && index === desk.row;
  return work.position.tiles[edge].map((digit, index) => ({
    digit,
    place: lowest + index,
    again: isLifted(work, ({ tile }) => tile?.edge === edge && tile.index === index),
    active: chosenRow(index) || (desk.slot?.at === edge && desk.slot.index === index),
    marked: marked(tileCell(edge, index)),
  }));
};

/** The mat as it lies, with what the child holds, what a hint marks and what is to be looked at again. */
export const matViewOf = (work: Work, desk: Desk): MatView => {
  const { mat, multiplicand, multiplier } = work.problem;
  const targets = targetsOf(work, desk);
  const marked = markedBy(desk);
  const held = desk.held?.what === 'pile' ? desk.held.from : null;
  return {
    name: words('mat'),
    shape: mat,
    needed: multiplicand.digits.length + multiplier.digits.length,
    numbers: desk.numbers,
    squares: work.position.piles.map((row, r) =>
      row.map(({ bars }, c) => ({
        bars,
        again: isLifted(work, ({ square }) => sameSquare(square ?? null, [r, c])),
        target: targets.some((square) => sameSquare(square, [r, c])),
        held: sameSquare(held, [r, c]) || sameSquare(desk.open, [r, c]),
        marked: marked(squareCell([r, c])),
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
const productPlaces = ({ problem }: Work): number[] => {
  const { mat, multiplicand, multiplier } = problem;
  const length = Math.min(mat.columns, multiplicand.digits.length + multiplier.digits.length + 1);
  return Array.from({ length }, (_, i) => mat.origin + length - 1 - i);
};

export const paperViewOf = (work: Work, desk: Desk): PaperView => {
  const { lines, points } = work.position.paper;
  const line = lines.product ?? {};
  const { origin } = work.problem.mat;
  const pointAt = points.product === undefined ? null : origin + points.product;
  const pointAgain = isLifted(work, ({ step }) => step === 'point');
  return {
    multiplicand: work.problem.multiplicand.text,
    multiplier: work.problem.multiplier.text,
    said: saidOf(work),
    product: productPlaces(work).map((place) => ({
      place,
      digit: line[String(place)] ?? null,
      again:
        (pointAgain && place === (pointAt ?? origin)) ||
        isLifted(work, ({ line: on }) => on?.line === 'product' && on.place === place),
      active: desk.tool === 'read' && desk.place === place && !work.finished.problem,
      marked: desk.hint?.place === place,
      point: place === pointAt && pointAt > origin,
    })),
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
