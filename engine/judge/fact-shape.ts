import type { Square } from '../mat/geometry.ts';
import { at } from './ledger.ts';
import type { Lay, Plan } from './scene.ts';

/** How the bars of one fact lie: beads by square, and as they were laid. */
export interface Shape {
  readonly bySquare: ReadonlyMap<number, number>;
  readonly byLay: readonly number[];
}

export function shapeOf(plan: Plan, lays: readonly Lay[]): Shape {
  const bySquare = new Map<number, number>();
  for (const { square, kind, count } of lays) {
    const index = at(plan, square);
    const beads = (bySquare.get(index) ?? 0) + kind * count;
    if (beads === 0) bySquare.delete(index);
    else bySquare.set(index, beads);
  }
  return { bySquare, byLay: lays.map(({ kind, count }) => kind * count) };
}

/** The two right ways: units on the pair's square and tens on the square to the left, or all on its own. */
export function rightWays(
  plan: Plan,
  pair: Square,
  fact: number,
): readonly ReadonlyMap<number, number>[] {
  const own = at(plan, pair);
  const left = own + 1;
  const split = new Map<number, number>();
  if (fact % 10 > 0) split.set(own, fact % 10);
  if (fact >= 10) split.set(left, Math.floor(fact / 10));
  return [split, new Map([[own, fact]])];
}

export function isSame(a: ReadonlyMap<number, number>, b: ReadonlyMap<number, number>): boolean {
  return a.size === b.size && [...a].every(([square, beads]) => b.get(square) === beads);
}

/** Whether more bars could still make it this way. */
export function isPart(
  some: ReadonlyMap<number, number>,
  way: ReadonlyMap<number, number>,
): boolean {
  return [...some].every(([square, beads]) => beads > 0 && beads <= (way.get(square) ?? 0));
}

/** Right digits that lie on wrong squares, all of them or (in mid-work) those laid so far. */
export function isMisplaced(shape: Shape, fact: number, whole: boolean): boolean {
  const amounts = [[fact % 10, Math.floor(fact / 10)].filter((digit) => digit > 0), [fact]];
  const shown = [[...shape.bySquare.values()], shape.byLay];
  return shown.some((some) =>
    amounts.some((all) => (whole ? sameItems(some, all) : isAmong(some, all))),
  );
}

function sameItems(some: readonly number[], all: readonly number[]): boolean {
  return some.length === all.length && isAmong(some, all);
}

function isAmong(some: readonly number[], all: readonly number[]): boolean {
  const left = all.slice();
  return some.every((item) => {
    const index = left.indexOf(item);
    if (index >= 0) left.splice(index, 1);
    return index >= 0;
  });
}
