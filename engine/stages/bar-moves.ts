import { uncounted } from '../judge/counting.ts';
import { at, ownDue, stepOf } from '../judge/ledger.ts';
import { reading } from '../judge/product.ts';
import { rowLaid, sayable } from '../judge/rows.ts';
import type { Findings, Scene } from '../judge/scene.ts';
import type { Suggestion } from '../judge/work.ts';
import { pileAt } from '../mat/bars.ts';
import type { Square } from '../mat/geometry.ts';
import { pileValue } from '../mat/position.ts';
import { digitOn } from '../mat/sheet.ts';
import { amountText } from '../numerals/numeral.ts';
import {
  countPile,
  exchange,
  finishProduct,
  finishRow,
  layBars,
  rubDigit,
  sayRow,
  slide,
  writeDigit,
} from './captions.ts';

/** The multiplicand's bar, as many times as the multiplier's digit says, from the units on. */
export function nextLaying(scene: Scene, row: number): Suggestion | null {
  for (let column = 0; column < scene.plan.across.length; column += 1) {
    const square: Square = [row, column];
    if ((ownDue(scene.position, square) ?? 0) === 0) continue;
    if (scene.ledger.plots[at(scene.plan, square)]!.laid !== 0) continue;
    const kind = scene.position.tiles.bottom[column]!;
    const count = scene.position.tiles.right[row]!;
    return layBars(scene, { do: 'layBars', square, kind, count });
  }
  return null;
}

/** Counts and exchanges from right to left along a row, until each square holds at most one bar. */
export function nextSettling(scene: Scene, row: number): Suggestion | null {
  for (let column = 0; column < scene.plan.columns; column += 1) {
    const square: Square = [row, column];
    const { bars } = scene.position.piles[row]![column]!;
    const value = pileValue({ bars });
    if (value === 0) continue;
    if (isToCount(scene, square)) return countPile(scene, square);
    if (bars[9]! === 0 || column + 1 >= scene.plan.columns) continue;
    return exchange(scene, {
      do: 'exchange',
      from: square,
      tens: bars[9]!,
      to: [row, column + 1],
      ones: bars[9]!,
    });
  }
  return null;
}

/**
 * Loose bars that come to ten or more are counted, and several bars are, so that one of their kind can lie in their
 * place. But where the tens were made by hand, what is left over is read as it lies: nothing asks for its count.
 */
function isToCount(scene: Scene, square: Square): boolean {
  const { bars } = pileAt(scene.position, square)!;
  const loose = pileValue({ bars }) - 10 * bars[9]!;
  if (loose >= 10) return true;
  const pairs = uncounted(scene, scene.ledger.heaps[at(scene.plan, square)]!);
  const laid = pairs.reduce((sum, pair) => sum + scene.ledger.plots[pair]!.laid, 0);
  return bars.reduce((sum, count) => sum + count, 0) - bars[9]! > 1 && loose >= laid;
}

/** A row is said while it can still be seen. */
export function nextSaying(scene: Scene, findings: Findings, row: number): Suggestion | null {
  const step = stepOf(scene.plan, `said:${row}`);
  if (step < 0 || findings.at(step)!.grade === 'right') return null;
  const spoken = scene.position.said.rows[row] !== undefined;
  const hidden = (scene.ledger.disturbed & (1 << row)) !== 0 && scene.plan.up.length > 1;
  if (!rowLaid(scene, row) || (hidden && !spoken)) return null;
  const due = amountText(sayable(scene, row)[0]!, scene.plan.problem.mat.origin);
  return spoken && scene.position.said.rows[row] === due ? null : sayRow(row, due);
}

export function nextRowFinish(scene: Scene, row: number): Suggestion | null {
  return scene.position.finished.rows.includes(row) ? null : finishRow(row);
}

/** Whatever lies above the bottom row comes down its diagonal as far as the mat goes. */
export function nextSlide(scene: Scene): Suggestion | null {
  const { rows, columns } = scene.plan;
  for (let row = 1; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1) {
      if (pileValue(scene.position.piles[row]![column]!) === 0) continue;
      const lowest = Math.max(0, row + column - (columns - 1));
      if (lowest < row) return slide(scene, [row, column], [lowest, row + column - lowest]);
    }
  return null;
}

/** The product as it can be read from the bottom row, units first. */
export function nextDigit(scene: Scene, findings: Findings): Suggestion | null {
  const { plan, position } = scene;
  const { origin } = plan.problem.mat;
  const own = reading(scene).bottom;
  for (let index = 0; index < plan.rows + plan.columns; index += 1) {
    const place = origin + index;
    const written = digitOn(position.paper, 'product', index);
    const due = own[index];
    const step = stepOf(plan, `read:${place}`);
    if (
      written === due ||
      (step >= 0 && written !== undefined && findings.at(step)!.grade === 'right')
    ) {
      continue;
    }
    if (due === undefined) return rubDigit({ do: 'rub', line: 'product', place });
    return writeDigit({ do: 'write', line: 'product', place, digit: due }, 'writeProduct');
  }
  return null;
}

export function nextProductFinish(scene: Scene): Suggestion | null {
  return scene.position.finished.product ? null : finishProduct();
}
