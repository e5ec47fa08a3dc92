import { pileValue } from '../mat/position.ts';
import { ownDue } from './ledger.ts';
import { kept, recalled, slots } from './memo.ts';
import type { Scene } from './scene.ts';

/**
 * What can be read from the mat, digits from the origin up. A digit of the product may be read from the
 * bottom row or from the whole mat; of a place that still holds ten or more, its units digit or the digit
 * after carrying. `ready`: so many places, from the origin, hold nothing unlaid, unslid or unsettled.
 */
export interface Reading {
  readonly bottom: readonly number[];
  readonly ways: readonly (readonly number[])[];
  readonly ready: number;
}

const READING = slots(1);

/** The same mat is read several times for one answer. */
export function reading(scene: Scene): Reading {
  const { memo, position, ledger } = scene;
  const { piles, tiles } = position;
  const { plots, halves } = ledger;
  return (
    recalled(memo, READING, piles, tiles, plots, halves) ??
    kept(memo, READING, readMat(scene), piles, tiles, plots, halves)
  );
}

function readMat(scene: Scene): Reading {
  const { plan, position } = scene;
  const places = plan.rows + plan.columns;
  const bottom = new Array<number>(places).fill(0);
  const whole = new Array<number>(places).fill(0);
  let ready = places;
  for (let row = 0; row < plan.rows; row += 1)
    for (let column = 0; column < plan.columns; column += 1) {
      const value = pileValue(position.piles[row]![column]!);
      const place = row + column;
      whole[place]! += value;
      if (row === 0) bottom[place]! += value;
      if (value >= 10 || (row > 0 && value > 0) || unlaid(scene, row, column)) {
        ready = Math.min(ready, place);
      }
    }
  for (const { place } of scene.ledger.halves) ready = Math.min(ready, place);
  const carried = carry(bottom);
  const ways = ready === places ? [carried] : [units(bottom), carried, units(whole), carry(whole)];
  return { bottom: carried, ways, ready };
}

function unlaid({ plan, position, ledger }: Scene, row: number, column: number): boolean {
  const index = row * plan.columns + column;
  return ledger.plots[index]!.laid === 0 && (ownDue(position, plan.squares[index]!) ?? 0) > 0;
}

function units(totals: readonly number[]): number[] {
  return trimmed(totals.map((total) => total % 10));
}

function carry(totals: readonly number[]): number[] {
  const digits = totals.slice();
  let carried = 0;
  for (let place = 0; place < totals.length || carried > 0; place += 1) {
    const total = (totals[place] ?? 0) + carried;
    digits[place] = total % 10;
    carried = Math.floor(total / 10);
  }
  return trimmed(digits);
}

/** Without zeros at the front; nothing at all is the one digit 0. */
function trimmed(digits: number[]): number[] {
  let length = digits.length;
  while (length > 1 && digits[length - 1] === 0) length -= 1;
  return length === digits.length ? digits : digits.slice(0, length);
}
