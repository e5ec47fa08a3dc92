import type { Square } from '../../mat/geometry.ts';
import { pileValue } from '../../mat/position.ts';
import type { Problem } from '../../problem.ts';
import { rowText } from '../../pupils/bars.ts';
import { believed, type ExchangeAt, type SlideAt } from '../../pupils/beliefs.ts';
import { digitsRead, exchangeMeant, slideAt, slideMeant } from '../../pupils/mat.ts';
import { shiftOf } from '../../pupils/paper.ts';
import type { DoneWork } from '../done.ts';
import {
  isSameSquare,
  ROOM,
  type Sighting,
  type Strand,
  sighting,
  type Topic,
} from './evidence.ts';
import { isOver } from './first-written.ts';
import type { Lying } from './lying.ts';
import type { Counted, Exchanged, MatWalk, Said, Slid } from './mat-walk.ts';

/** How many answers each decision has, roughly. */
const AMONG = { count: 10, exchange: 20, slide: 6, say: 30 } as const;

/** Counts, exchanges, slides and sayings, each by the mat as it lay then; and what was left lying. */
export function movesSeen(work: DoneWork, walk: MatWalk): Strand[] {
  const left = isOver(work) ? leftLying(walk.mat) : { piles: [], tens: [] };
  return [
    walk.counts.map((move) => countSeen(work.problem, move)),
    [
      ...walk.exchanges.flatMap((move) => exchangeSeen(walk, move)),
      ...left.tens.map((pile) => tensLeft(walk, pile)),
    ],
    [...walk.slides.map(slideSeen), ...left.piles.map((pile) => pileLeft(walk, pile))],
    walk.sayings.map(sayingSeen),
  ];
}

/** Keys of what was left lying come before those of what was done, which are from the log. */
function leftKey([row, column]: Square): number {
  return -1 - row * ROOM - column;
}

function settledAt({ mat }: Problem, [row, column]: Square): string {
  return `settled:${mat.origin + row + column}`;
}

/** `ofPair`: counted where a pair's bars were laid. */
interface CountSeen {
  readonly square: Square;
  readonly bars: readonly number[];
  readonly ofPair: boolean;
  readonly total: number;
}

const COUNT: Topic<CountSeen> = {
  bears: ['count'],
  expect(problem, { square, bars, ofPair, total }, beliefs) {
    const step = ofPair ? `counted:${square[0]}:${square[1]}` : settledAt(problem, square);
    const expected = believed(beliefs, 'count', { bars }, pileValue({ bars }));
    return [{ key: 0, step, given: total, expected, among: AMONG.count }];
  },
};

function countSeen({ multiplicand }: Problem, { action, index, afterSliding, bars }: Counted) {
  const { square, total } = action;
  const ofPair = !afterSliding && square[1] < multiplicand.digits.length;
  return sighting(
    COUNT,
    `${square}|${bars}|${ofPair}${total}`,
    { square, bars, ofPair, total },
    index,
  );
}

/** `given`: what was laid for ten-bars and where; null: they still lie there. */
interface ExchangeSeen {
  readonly at: ExchangeAt;
  readonly given: string | null;
}

const EXCHANGE: Topic<ExchangeSeen> = {
  bears: ['exchange'],
  expect(problem, { at, given }, beliefs) {
    const meant = exchangeMeant(problem, beliefs, at);
    const expected = meant === null ? null : codeOf(meant.ones, meant.left);
    return [{ key: 0, step: settledAt(problem, at.from), given, expected, among: AMONG.exchange }];
  },
};

/** Where nothing is laid it does not matter where. */
function codeOf(ones: number, left: number): string {
  return ones === 0 ? 'nothing' : `${ones}, ${left} to the left`;
}

function exchangedFrom(at: ExchangeAt, given: string | null, key: number): Sighting {
  const spelt = `${at.from}|${at.tens}${at.afterSliding}${given}`;
  return sighting(EXCHANGE, spelt, { at, given }, key);
}

function exchangeSeen(walk: MatWalk, move: Exchanged): Sighting[] {
  const { action, index, afterSliding } = move;
  const { from, tens } = action;
  if (tens === 0) return [];
  const { to, ones } = secondHalf(walk, move) ?? action;
  const left = to[0] + to[1] - from[0] - from[1];
  return [exchangedFrom({ from, tens, afterSliding }, codeOf(ones, left), index)];
}

/** The second half of a half-made exchange, wherever it was made. */
function secondHalf(walk: MatWalk, { action: { from, ones }, index }: Exchanged) {
  if (ones !== 0) return undefined;
  const half = walk.exchanges.find(
    ({ action, index: later }) =>
      later > index && action.tens === 0 && isSameSquare(action.from, from),
  );
  return half?.action;
}

function tensLeft({ slid }: MatWalk, { from, tens }: Left): Sighting {
  return exchangedFrom({ from, tens, afterSliding: slid }, null, leftKey(from));
}

/** `given`: the column that a pile came to; null: it still lies there. */
interface SlideSeen {
  readonly at: SlideAt;
  readonly given: number | null;
}

const SLIDE: Topic<SlideSeen> = {
  bears: ['slide'],
  expect(problem, { at, given }, beliefs) {
    const meant = slideMeant(problem, beliefs, at);
    const expected = meant === null ? null : meant[1];
    return [{ key: 0, step: `slid:${at.from[0]}`, given, expected, among: AMONG.slide }];
  },
};

function slidFrom(at: SlideAt, given: number | null, key: number): Sighting {
  return sighting(SLIDE, `${at.from}|${at.down}${at.outermost}${given}`, { at, given }, key);
}

function slideSeen({ action, at, index }: Slid): Sighting {
  return slidFrom(at, action.to[1], index);
}

function pileLeft({ mat }: MatWalk, { from }: Left): Sighting {
  return slidFrom(slideAt(mat.beads, from, from[0]), null, leftKey(from));
}

const SAYING: Topic<Said> = {
  bears: ['read', 'shift'],
  expect(problem, { row, answer, piles, across, up }, beliefs) {
    const digits = digitsRead(beliefs, piles, row);
    const shift = shiftOf(beliefs, { row, across, up, length: digits.length, first: 0 });
    const expected = rowText(problem, digits, shift);
    return [{ key: 0, step: `said:${row}`, given: answer, expected, among: AMONG.say }];
  },
};

function sayingSeen(said: Said): Sighting {
  const { index, row, answer, piles, across, up } = said;
  return sighting(SAYING, `${row}|${answer}|${piles}|${across}|${up}`, said, index);
}

interface Left {
  readonly from: Square;
  readonly tens: number;
}

/** Ten-bars on the bottom row, and piles above it, when all is said to be finished. */
function leftLying({ beads, bars }: Lying): {
  readonly piles: readonly Left[];
  readonly tens: readonly Left[];
} {
  const [piles, tens]: [Left[], Left[]] = [[], []];
  for (const [row, line] of beads.entries())
    for (const [column, lying] of line.entries()) {
      if (lying === 0) continue;
      const left: Left = { from: [row, column], tens: bars[row]![column]![9]! };
      if (row > 0) piles.push(left);
      else if (left.tens > 0) tens.push(left);
    }
  return { piles, tens };
}
