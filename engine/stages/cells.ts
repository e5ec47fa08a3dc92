import { AT_THE_PRODUCT, NOW } from '../judge/ledger.ts';
import { kept, recalled, slots } from '../judge/memo.ts';
import { readSquares } from '../judge/paper/facts-kept.ts';
import { lostIn, readyIn } from '../judge/paper/facts-read.ts';
import { digitDue, factsOf, isRight } from '../judge/paper/facts-row.ts';
import { factsWritten } from '../judge/paper/facts-written.ts';
import { pens } from '../judge/paper/pens.ts';
import { type Fact, PARTS, type RowOfFacts, slotOf, squareOf } from '../judge/paper/squares.ts';
import {
  type Addends,
  noSums,
  readSum,
  type Sums,
  summing,
  zerosLeftOut,
} from '../judge/paper/summing.ts';
import { pointWith } from '../judge/point.ts';
import type { Findings, Plan, Scene } from '../judge/scene.ts';
import type { StageRules } from '../judge/stage.ts';
import { tiles } from '../judge/tiles.ts';
import type { Suggestion } from '../judge/work.ts';
import type { Desk } from '../mat/desk.ts';
import type { Entry } from '../mat/sheet.ts';
import { nextProductFinish, nextRowFinish } from './bar-moves.ts';
import { rubSquare, writeSquare } from './captions.ts';
import { nextInLine } from './line-moves.ts';
import { nextPoint } from './point-moves.ts';
import { nextTile } from './tile-moves.ts';

const DIAGONALS = slots(1);

/** The digits on the squares, added along the diagonals. */
const diagonals: Addends = {
  applies: () => true,
  sums: ({ plan, position, memo }) => {
    const { squares } = position.paper;
    return (
      recalled(memo, DIAGONALS, squares) ?? kept(memo, DIAGONALS, sumsOf(plan, position), squares)
    );
  },
  ready: (scene) => readyIn(scene, readSquares(scene, NOW)),
};

function sumsOf(plan: Plan, position: Desk): Sums {
  const sums = noSums(plan);
  const { squares } = position.paper;
  for (let row = 0; row < squares.length; row += 1) {
    const line = squares[row];
    for (let column = 0; line !== undefined && column < line.length; column += 1) {
      addTo(sums[row + column]!, line[column]?.own);
      addTo(sums[row + column]!, line[column]?.fromRight);
    }
  }
  return sums;
}

function addTo(sum: { base: number; reaching: number }, entry: Entry | undefined): void {
  if (entry === undefined) return;
  sum.base += entry.digit;
  sum.reaching += 1;
}

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
  const squares = readSquares(scene, AT_THE_PRODUCT);
  const stray = squares.map(lostIn).find(({ length }) => length > 0)?.[0];
  if (stray !== undefined) return rubSquare(scene.plan, stray);
  for (let row = 0; row < scene.plan.rows; row += 1) {
    const move = nextFact(scene, squares[row]!);
    if (move !== null) return move;
    const finish = row < scene.plan.up.length ? nextRowFinish(scene, row) : null;
    if (finish !== null) return finish;
  }
  return null;
}

/** The units here, the tens on the square to the left; zeros are left out. */
function nextFact(scene: Scene, { best }: RowOfFacts): Suggestion | null {
  for (const fact of factsOf(scene.plan, best)) {
    const move = nextDigit(scene, fact, best.swapped);
    if (move !== null) return move;
  }
  return null;
}

function nextDigit(scene: Scene, fact: Fact, swapped: boolean): Suggestion | null {
  for (const part of PARTS) {
    if (isRight(fact, part)) continue;
    const entry = fact[part];
    const digit = digitDue(fact.due ?? 0, part);
    if (digit === 0 && entry !== undefined) return rubSquare(scene.plan, entry);
    const square = squareOf(fact.pair, part);
    const slot = slotOf(part, swapped);
    return writeSquare(scene.plan, { do: 'write', square, slot, digit }, fact.pair);
  }
  return null;
}

function nextSum(scene: Scene): Suggestion | null {
  const reading = readSum(diagonals, scene, AT_THE_PRODUCT);
  return nextInLine(scene, reading, { line: 'product', carries: 'carry:product', row: -1 });
}

function leftOut(scene: Scene): readonly number[] {
  return zerosLeftOut(readSum(diagonals, scene, AT_THE_PRODUCT));
}

/** No bars: facts in figures on the squares, the diagonals summed; the bridge to paper. */
export const cells: StageRules = {
  id: 'cells',
  // What was written on squares is noted before the sum reads them.
  aspects: [tiles, pens, factsWritten, summing(diagonals), pointWith(leftOut)],
  next,
};
