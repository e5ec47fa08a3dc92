import { remembered } from '../judge/memo.ts';
import {
  digitDue,
  type Fact,
  isRight,
  readSquares,
  type Squares,
} from '../judge/paper/facts-read.ts';
import { factsReady, factsWritten } from '../judge/paper/facts-written.ts';
import { pens } from '../judge/paper/pens.ts';
import { PARTS, slotOf, squareOf } from '../judge/paper/squares.ts';
import { type Addends, readSum, type Sums, summing, zerosLeftOut } from '../judge/paper/summing.ts';
import { pointWith } from '../judge/point.ts';
import type { Findings, Moment, Plan, Scene } from '../judge/scene.ts';
import type { StageRules } from '../judge/stage.ts';
import { tiles } from '../judge/tiles.ts';
import type { Suggestion } from '../judge/work.ts';
import type { Position } from '../mat/position.ts';
import { nextProductFinish, nextRowFinish } from './bar-moves.ts';
import { rubSquare, writeSquare } from './captions.ts';
import { nextInLine } from './line-moves.ts';
import { nextPoint } from './point-moves.ts';
import { nextTile } from './tile-moves.ts';

/** The digits on the squares, added along the diagonals. */
const diagonals: Addends = {
  applies: () => true,
  sums: ({ plan, position, memo }) =>
    remembered(memo, 'diagonals', [position.paper.squares], () => sumsOf(plan, position)),
  ready: (scene) => factsReady(scene, { at: 'now' }),
};

function sumsOf(plan: Plan, position: Position): Sums {
  const places = plan.rows + plan.columns;
  const sums = Array.from({ length: places }, () => ({ base: 0, reaching: 0 }));
  for (const [key, content] of Object.entries(position.paper.squares)) {
    const [row, column] = key.split(':').map(Number);
    const sum = sums[row! + column!]!;
    for (const { digit } of Object.values(content)) {
      sum.base += digit;
      sum.reaching += 1;
    }
  }
  return sums;
}

const OVER: Moment = { at: 'product' };

function next(scene: Scene, findings: Findings): Suggestion | null {
  return (
    nextTile(scene) ??
    nextRow(scene) ??
    nextSum(scene) ??
    nextPoint(scene, findings, leftOut(scene)[0]) ??
    nextProductFinish(scene)
  );
}

function nextRow(scene: Scene): Suggestion | null {
  const squares = readSquares(scene, OVER);
  const [stray] = squares.astray;
  if (stray !== undefined) return rubSquare(scene.plan, stray);
  for (let row = 0; row < scene.plan.rows; row += 1) {
    const move = nextFact(scene, squares, row);
    if (move !== null) return move;
    const finish = row < scene.plan.up.length ? nextRowFinish(scene, row) : null;
    if (finish !== null) return finish;
  }
  return null;
}

/** The units here, the tens on the square to the left; zeros are left out. */
function nextFact(scene: Scene, { facts, swapped }: Squares, row: number): Suggestion | null {
  for (const fact of facts) {
    if (fact.pair[0] !== row) continue;
    const move = nextDigit(scene, fact, swapped[row]!);
    if (move !== null) return move;
  }
  return null;
}

function nextDigit(scene: Scene, fact: Fact, swapped: boolean): Suggestion | null {
  for (const part of PARTS) {
    if (isRight(fact, part)) continue;
    const entry = fact.written[part];
    const digit = digitDue(fact.due ?? 0, part);
    if (digit === 0 && entry !== undefined) return rubSquare(scene.plan, entry);
    const square = squareOf(fact.pair, part);
    const slot = slotOf(part, swapped);
    return writeSquare(scene.plan, { do: 'write', square, slot, digit }, fact.pair);
  }
  return null;
}

function nextSum(scene: Scene): Suggestion | null {
  const reading = readSum(diagonals, scene, OVER);
  return nextInLine(scene, reading, { line: 'product', carries: 'carry:product', row: -1 });
}

function leftOut(scene: Scene): readonly number[] {
  return zerosLeftOut(readSum(diagonals, scene, OVER));
}

/** No bars: facts in figures on the squares, the diagonals summed; the bridge to paper. */
export const cells: StageRules = {
  id: 'cells',
  aspects: [tiles, pens, factsWritten, summing(diagonals), pointWith(leftOut)],
  next,
};
