import type { ActionOf } from '../../mat/action.ts';
import type { Square } from '../../mat/geometry.ts';
import { type Position, pileValue } from '../../mat/position.ts';
import { rowText } from '../../pupils/bars.ts';
import { type Beliefs, believed } from '../../pupils/beliefs.ts';
import { digitsRead, exchangeMeant, slideAt, slideMeant } from '../../pupils/mat.ts';
import { shiftOf } from '../../pupils/paper.ts';
import { digitsOn } from '../../pupils/tiles.ts';
import type { DoneWork } from '../done.ts';
import { type EvidencePart, type Expectation, oneGroup, ROOM } from './evidence.ts';
import { isOver } from './first-written.ts';
import type { MatMove, MatWalk } from './mat-walk.ts';

/** How many answers each decision has, roughly. */
const AMONG = { count: 10, exchange: 20, slide: 6, say: 30 } as const;

/** Counts, exchanges, slides and sayings, each by the mat as it lay then; and what was left lying. */
export function moveEvidence(work: DoneWork, walk: MatWalk): readonly EvidencePart[] {
  const left = isOver(work) ? lyingIn(work) : { piles: [], tens: [] };
  return [
    oneGroup(['count'], (beliefs) => walk.counts.map((move) => expectCount(work, move, beliefs))),
    oneGroup(['exchange'], (beliefs) => [
      ...walk.exchanges.flatMap((move) => expectExchange(work, walk, move, beliefs)),
      ...left.tens.map((pile) => expectTensLeft(work, walk, pile, beliefs)),
    ]),
    oneGroup(['slide'], (beliefs) => [
      ...walk.slides.map((move) => expectSlide(work, move, beliefs)),
      ...left.piles.map((pile) => expectPileLeft(work, pile, beliefs)),
    ]),
    oneGroup(['read', 'shift'], (beliefs) =>
      walk.sayings.flatMap((move) => expectSaying(work, move, beliefs)),
    ),
  ];
}

function barsOn({ piles }: Position, [row, column]: Square): readonly number[] {
  return piles[row]![column]!.bars;
}

function settledAt({ problem }: DoneWork, [row, column]: Square): string {
  return `settled:${problem.mat.origin + row + column}`;
}

function expectCount(
  work: DoneWork,
  { action, before, index, afterSliding }: MatMove<ActionOf<'count'>>,
  beliefs: Beliefs,
): Expectation {
  const bars = barsOn(before, action.square);
  const [row, column] = action.square;
  const { length } = work.problem.multiplicand.digits;
  const ofPair = !afterSliding && column < length;
  return {
    key: index,
    step: ofPair ? `counted:${row}:${column}` : settledAt(work, action.square),
    given: action.total,
    expected: believed(beliefs, 'count', { bars }, pileValue({ bars })),
    among: AMONG.count,
  };
}

/** The second half of a half-made exchange, wherever it was made. */
function secondHalf(walk: MatWalk, { action, index }: MatMove<ActionOf<'exchange'>>) {
  const half = walk.exchanges.find(
    (other) =>
      other.index > index &&
      other.action.tens === 0 &&
      other.action.from.join() === action.from.join(),
  );
  return action.ones === 0 ? half?.action : undefined;
}

function expectExchange(
  work: DoneWork,
  walk: MatWalk,
  move: MatMove<ActionOf<'exchange'>>,
  beliefs: Beliefs,
): Expectation[] {
  const { action, index, afterSliding } = move;
  const { from, tens } = action;
  if (tens === 0) return [];
  const { to, ones } = secondHalf(walk, move) ?? action;
  const left = to[0] + to[1] - from[0] - from[1];
  const meant = exchangeMeant(work.problem, beliefs, { from, tens, afterSliding });
  return [
    {
      key: index,
      step: settledAt(work, from),
      given: codeOf(ones, left),
      expected: meant === null ? null : codeOf(meant.ones, meant.left),
      among: AMONG.exchange,
    },
  ];
}

/** Where nothing is laid it does not matter where. */
function codeOf(ones: number, left: number): string {
  return ones === 0 ? 'nothing' : `${ones}, ${left} to the left`;
}

function expectSlide(
  work: DoneWork,
  { action, before, index }: MatMove<ActionOf<'slide'>>,
  beliefs: Beliefs,
): Expectation {
  const { from, to } = action;
  const meant = slideMeant(work.problem, beliefs, slideAt(before, from, from[0] - to[0]));
  return {
    key: index,
    step: `slid:${from[0]}`,
    given: to[1],
    expected: meant === null ? null : meant[1],
    among: AMONG.slide,
  };
}

function expectSaying(
  { problem }: DoneWork,
  { action, before, index, afterSliding }: MatMove<ActionOf<'say'>>,
  beliefs: Beliefs,
): Expectation[] {
  if ('prompt' in action || afterSliding) return [];
  const { row, answer } = action;
  const digits = digitsRead(beliefs, before.piles[row]!.map(pileValue), row);
  const [across, up] = [digitsOn(before.tiles.bottom), digitsOn(before.tiles.right)];
  const shift = shiftOf(beliefs, { row, across, up, length: digits.length, first: 0 });
  const expected = rowText(problem, digits, shift);
  return [{ key: index, step: `said:${row}`, given: answer, expected, among: AMONG.say }];
}

interface Lying {
  readonly from: Square;
  readonly tens: number;
}

/** Ten-bars on the bottom row, and piles above it, when all is said to be finished. */
function lyingIn({ position }: DoneWork): {
  readonly piles: readonly Lying[];
  readonly tens: readonly Lying[];
} {
  const all = position.piles.flatMap((line, row) =>
    line.flatMap((pile, column): Lying[] =>
      pileValue(pile) === 0 ? [] : [{ from: [row, column], tens: pile.bars[9]! }],
    ),
  );
  return {
    piles: all.filter(({ from }) => from[0] > 0),
    tens: all.filter(({ from, tens }) => from[0] === 0 && tens > 0),
  };
}

/** Keys of what was left lying come before those of what was done, which are from the log. */
function leftKey([row, column]: Square): number {
  return -1 - row * ROOM - column;
}

function expectTensLeft(
  work: DoneWork,
  { slid }: MatWalk,
  { from, tens }: Lying,
  beliefs: Beliefs,
): Expectation {
  const meant = exchangeMeant(work.problem, beliefs, { from, tens, afterSliding: slid });
  const expected = meant === null ? null : codeOf(meant.ones, meant.left);
  const [key, step] = [leftKey(from), settledAt(work, from)];
  return { key, step, given: null, expected, among: AMONG.exchange };
}

function expectPileLeft({ problem, position }: DoneWork, { from }: Lying, beliefs: Beliefs) {
  const to = slideMeant(problem, beliefs, slideAt(position, from, from[0]));
  const expected = to === null ? null : to[1];
  const [key, step] = [leftKey(from), `slid:${from[0]}`];
  return { key, step, given: null, expected, among: AMONG.slide };
}
