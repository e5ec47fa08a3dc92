import { isSameSquare, type Square } from '../../mat/geometry.ts';
import type { Problem } from '../../problem.ts';
import { rowText } from '../../pupils/bars.ts';
import { believed, type ExchangeAt } from '../../pupils/beliefs.ts';
import { digitsRead, exchangeMeant, slideAt, slideMeant } from '../../pupils/mat.ts';
import { shiftOf } from '../../pupils/paper.ts';
import type { DoneWork } from '../done.ts';
import { type Strand, singly } from './evidence.ts';
import { isOver } from './first-done.ts';
import { barsOn, type Lying } from './lying.ts';
import type { Counted, Exchanged, MatWalk, Said, Slid } from './mat-walk.ts';

/** How many answers each decision has, roughly. */
const AMONG = { count: 10, exchange: 20, slide: 6, say: 30 } as const;

/** Counts, exchanges, slides and sayings, each by the mat as it lay then; and what was left lying. */
export function movesSeen(work: DoneWork, walk: MatWalk): Strand[] {
  const exchanges: ExchangeSeen[] = [];
  for (const move of walk.exchanges)
    if (move.action.tens > 0) exchanges.push(exchangeSeen(walk, move));
  const slides = walk.slides.slice();
  if (isOver(work)) {
    const { piles, tens } = leftLying(walk.mat);
    for (const pile of tens) exchanges.push(tensLeft(walk, pile));
    for (const pile of piles) slides.push(pileLeft(walk, pile));
  }
  return [
    { topic: COUNT, seen: walk.counts },
    { topic: EXCHANGE, seen: exchanges },
    { topic: SLIDE, seen: slides },
    { topic: SAYING, seen: walk.sayings },
  ];
}

function settledAt({ mat }: Problem, [row, column]: Square): string {
  return `settled:${mat.origin + row + column}`;
}

const COUNT = singly<Counted>(['count'], {
  among: AMONG.count,
  step: (problem, { square, ofPair }) =>
    ofPair ? `counted:${square[0]}:${square[1]}` : settledAt(problem, square),
  given: ({ total }) => total,
  due: (_problem, { bars, beads }, beliefs) => believed(beliefs, 'count', { bars }, beads),
});

/** `given`: what was laid for ten-bars and where; null: they still lie there. */
interface ExchangeSeen {
  readonly at: ExchangeAt;
  readonly given: number | null;
}

const EXCHANGE = singly<ExchangeSeen>(['exchange'], {
  among: AMONG.exchange,
  step: (problem, { at }) => settledAt(problem, at.from),
  given: ({ given }) => given,
  due(problem, { at }, beliefs) {
    const meant = exchangeMeant(problem, beliefs, at);
    return meant === null ? null : codeOf(meant.ones, meant.left);
  },
});

/** How far to the left something is laid is less than half of it. */
const ASIDE = 32;

/** A number for what is laid and how far to the left; where nothing is laid it does not matter where. */
function codeOf(ones: number, left: number): number {
  return ones === 0 ? 0 : ones * ASIDE + left + ASIDE / 2;
}

function exchangeSeen(walk: MatWalk, move: Exchanged): ExchangeSeen {
  const { action, afterSliding } = move;
  const { from, tens } = action;
  const { to, ones } = secondHalf(walk, move) ?? action;
  const left = to[0] + to[1] - from[0] - from[1];
  return { at: { from, tens, afterSliding }, given: codeOf(ones, left) };
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

function tensLeft({ slid }: MatWalk, { from, tens }: Left): ExchangeSeen {
  return { at: { from, tens, afterSliding: slid }, given: null };
}

const SLIDE = singly<Slid>(['slide'], {
  among: AMONG.slide,
  step: (_problem, { at }) => `slid:${at.from[0]}`,
  given: ({ given }) => given,
  due(problem, { at }, beliefs) {
    const meant = slideMeant(problem, beliefs, at);
    return meant === null ? null : meant[1];
  },
});

function pileLeft({ mat }: MatWalk, { from }: Left): Slid {
  return { at: slideAt(mat.beads, from, from[0]), given: null };
}

const SAYING = singly<Said>(['read', 'shift'], {
  among: AMONG.say,
  step: (_problem, { row }) => `said:${row}`,
  given: ({ answer }) => answer,
  due(problem, { row, piles, across, up }, beliefs) {
    const digits = digitsRead(beliefs, piles, row);
    const shift = shiftOf(beliefs, { row, across, up, length: digits.length, first: 0 });
    return rowText(problem, digits, shift);
  },
});

interface Left {
  readonly from: Square;
  readonly tens: number;
}

/** Ten-bars on the bottom row, and piles above it, when all is said to be finished. */
function leftLying(mat: Lying): {
  readonly piles: readonly Left[];
  readonly tens: readonly Left[];
} {
  const [piles, tens]: [Left[], Left[]] = [[], []];
  for (let row = 0; row < mat.beads.length; row += 1)
    for (let column = 0; column < mat.columns; column += 1) {
      if (mat.beads[row]![column] === 0) continue;
      const from: Square = [row, column];
      const left: Left = { from, tens: barsOn(mat, from)[9]! };
      if (row > 0) piles.push(left);
      else if (left.tens > 0) tens.push(left);
    }
  return { piles, tens };
}
