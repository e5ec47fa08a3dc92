import type { Square, Told } from './beads.ts';
import type { Chance } from './chance.ts';
import { numberText } from './schoolbook.ts';
import { otherDigit } from './sheet.ts';

/** A question as the child hears it. */
export type Asked =
  | { readonly ask: 'worth'; readonly square: readonly [number, number] }
  | { readonly ask: 'square'; readonly place: number }
  | { readonly ask: 'category'; readonly places: readonly [number, number] }
  | { readonly ask: 'number'; readonly of: 'multiplicand' | 'multiplier' };

interface Mat {
  readonly rows: number;
  readonly columns: number;
  readonly origin: number;
}

/** Numbers to be laid in tiles: digits, lowest first, and the place of the lowest. */
export interface Numbers {
  readonly bottom: { readonly digits: readonly number[]; readonly lowest: number };
  readonly right: { readonly digits: readonly number[]; readonly lowest: number };
}

function shuffled<T>(list: readonly T[], chance: Chance): T[] {
  return list
    .map((item) => ({ item, order: chance.below(1_000_000) }))
    .sort((one, other) => one.order - other.order)
    .map(({ item }) => item);
}

function squaresOf({ rows, columns, origin }: Mat, place: number, here: boolean): Square[] {
  const all = Array.from(
    { length: rows * columns },
    (_, index): Square => [Math.floor(index / columns), index % columns],
  );
  return all.filter(([row, column]) => (row + column + origin === place) === here);
}

/** 1 at that place, written out: "1000", "0.01". */
function worthText(place: number): string {
  return place >= 0 ? `1${'0'.repeat(place)}` : `0.${'0'.repeat(-place - 1)}1`;
}

/** An answer to a question about squares, any right one or any wrong one. */
function answerOn(
  mat: Mat,
  asked: Exclude<Asked, { ask: 'number' }>,
  right: boolean,
  chance: Chance,
) {
  if (asked.ask === 'worth') {
    const place = mat.origin + asked.square[0] + asked.square[1];
    return worthText(right ? place : place + chance.pick([-2, -1, 1, 2]));
  }
  const place = asked.ask === 'square' ? asked.place : asked.places[0] + asked.places[1];
  return chance.pick(squaresOf(mat, place, right));
}

/** Walks the squares in any order; the questions named are answered wrongly. */
export function walked(
  mat: Mat,
  asked: readonly Asked[],
  wrong: readonly number[],
  chance: Chance,
) {
  const told: Told[] = shuffled([...asked.entries()], chance).flatMap(([prompt, each]) =>
    each.ask === 'number'
      ? []
      : [{ do: 'say', prompt, answer: answerOn(mat, each, !wrong.includes(prompt), chance) }],
  );
  return [...told, { do: 'finish', what: 'problem' }];
}

export const BUILD_SLIPS = ['wrong tile', 'missing tile', 'extra tile', 'wrong reading'] as const;
type BuildSlip = (typeof BUILD_SLIPS)[number];
const EDGES = ['bottom', 'right'] as const;
type Edge = (typeof EDGES)[number];

/** Lays both numbers and reads back what then lies there; each slip is made with the number of its edge. */
export function built(
  numbers: Numbers,
  asked: readonly Asked[],
  slips: readonly { readonly slip: BuildSlip; readonly edge: Edge }[],
  chance: Chance,
): Told[] {
  const made = (slip: BuildSlip, edge: Edge) =>
    slips.some((each) => each.slip === slip && each.edge === edge);
  const tiles = EDGES.flatMap((edge) => laid(numbers[edge].digits, edge, made, chance));
  const readings = asked.flatMap((each, prompt): Told[] => {
    if (each.ask !== 'number') return [];
    const edge: Edge = each.of === 'multiplicand' ? 'bottom' : 'right';
    const answer = read(numbers[edge], tiles, edge, made('wrong reading', edge), chance);
    return [{ do: 'say', prompt, answer }];
  });
  return [
    ...shuffled(tiles, chance),
    ...shuffled(readings, chance),
    { do: 'finish', what: 'problem' },
  ];
}

function laid(
  digits: readonly number[],
  edge: Edge,
  made: (slip: BuildSlip, edge: Edge) => boolean,
  chance: Chance,
): Told[] {
  const tile = (index: number, digit: number): Told => ({ do: 'layTile', edge, index, digit });
  const tiles = digits.map((digit, index) => tile(index, digit));
  const slipped = chance.below(digits.length);
  if (made('wrong tile', edge))
    tiles[slipped] = tile(slipped, otherDigit(digits[slipped]!, 9, chance));
  if (made('missing tile', edge)) tiles.splice(slipped, 1);
  if (made('extra tile', edge)) tiles.push(tile(digits.length, chance.below(10)));
  return tiles;
}

/** What lies there as a number; with a tile forgotten, the number as it was given. */
function read(
  { digits, lowest }: Numbers[Edge],
  tiles: readonly Told[],
  edge: Edge,
  wrongly: boolean,
  chance: Chance,
): string {
  const own = tiles.filter((each) => each['edge'] === edge);
  const shown = Array.from(
    { length: Math.max(digits.length, own.length) },
    (_, index) => own.find((each) => each['index'] === index)?.['digit'] as number | undefined,
  );
  const seen = shown.includes(undefined) ? [...digits] : (shown as number[]);
  const at = chance.below(seen.length);
  if (wrongly) seen[at] = otherDigit(seen[at]!, 9, chance);
  return numberText(seen, lowest);
}
