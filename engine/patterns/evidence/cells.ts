import type { ActionOf } from '../../mat/action.ts';
import type { Square } from '../../mat/geometry.ts';
import type { Beliefs } from '../../pupils/beliefs.ts';
import { diagonalsAdded, type SquareFigure } from '../../pupils/cells.ts';
import { pairsOfRow } from '../../pupils/pairs.ts';
import type { DoneWork } from '../done.ts';
import { type EvidencePart, type Expectation, oneGroup, ROOM } from './evidence.ts';
import { isOver, paperSeen } from './first-written.ts';
import { expectLine, lineSeen } from './line.ts';
import { pointEvidence } from './point.ts';
import { tilesEvidence } from './tiles.ts';

/** A fact as it was first written on the squares. */
interface FactSeen {
  readonly value: number;
  /** Columns left of the pair's own square. */
  readonly aside: number;
}

type FactsSeen = ReadonlyMap<string, FactSeen>;

/** Tiles, facts on the squares, the sum of the diagonals, the point. */
export function cellsEvidence(work: DoneWork): readonly EvidencePart[] {
  const facts = factsSeen(work);
  return [
    tilesEvidence(work),
    oneGroup(['fact', 'partner', 'works', 'aside'], (beliefs) => expectFacts(work, beliefs, facts)),
    sumEvidence(work),
    pointEvidence(work),
  ];
}

function sumEvidence(work: DoneWork): EvidencePart {
  const figures = figuresStanding(work);
  const paper = paperSeen(work);
  const [digits, notes] = [paper.first('product'), paper.first('carry:product')];
  const { origin } = work.problem.mat;
  const stepAt = (at: number) => `sum:${origin + at}`;
  const seen = lineSeen({ digits, notes, over: isOver(work), stepAt });
  const rows = work.problem.multiplier.digits.length;
  return oneGroup(['gather', 'add'], (beliefs) =>
    expectLine(
      seen,
      diagonalsAdded(beliefs, figures, rows, (at) => notes.get(at)),
      0,
    ),
  );
}

type Written = Extract<ActionOf<'write'>, { square: Square }>;

/** Told by the page whose fact a digit is of; else by its slot. */
function pairOf({ square: [row, column], slot, of }: Written): Square {
  return of ?? [row, slot === 'own' ? column : column - 1];
}

function factsSeen({ log }: DoneWork): FactsSeen {
  const written = new Map<string, Written[]>();
  for (const { action, refused } of log) {
    if (refused !== undefined || action.do !== 'write' || !('square' in action)) continue;
    const key = pairOf(action).join(':');
    const own = written.get(key) ?? [];
    if (own.some(({ square }) => square.join() === action.square.join())) continue;
    written.set(key, [...own, action]);
  }
  return new Map([...written].map(([key, own]) => [key, factOf(key, own)]));
}

/** Of two digits the one further right is the units; a single one says it by its slot. */
function factOf(key: string, own: readonly Written[]): FactSeen {
  const pairColumn = Number(key.split(':')[1]);
  const [first, second] = [...own].sort((one, other) => one.square[1] - other.square[1]);
  const alone = second === undefined && first!.slot === 'fromRight';
  const value = alone ? 10 * first!.digit : first!.digit + 10 * (second?.digit ?? 0);
  return { value, aside: first!.square[1] - (alone ? 1 : 0) - pairColumn };
}

function figuresStanding({ position }: DoneWork): SquareFigure[] {
  return Object.entries(position.paper.squares).flatMap(([key, content]) => {
    const [row, column] = key.split(':').map(Number);
    return Object.values(content).map(({ digit }) => ({ square: [row!, column!] as const, digit }));
  });
}

const FACTS = 40;
const PLACES = 6;
/** Keys of the squares come after those of the values. */
const WHERE = 30;

function expectFacts(work: DoneWork, beliefs: Beliefs, facts: FactsSeen): Expectation[] {
  const { problem, position } = work;
  const found: Expectation[] = [];
  for (const row of problem.multiplier.digits.keys()) {
    const done = isOver(work) || position.finished.rows.includes(row);
    const due = pairsOfRow(problem.mat, beliefs, position.tiles, row);
    for (let column = 0; column < problem.mat.columns; column += 1) {
      const seen = facts.get(`${row}:${column}`);
      const meant = due.find(({ pair }) => pair[1] === column);
      // A zero may be written or left out.
      const expected = meant?.fact || null;
      if (seen === undefined && (!done || expected === null)) continue;
      const step = Math.min(column, problem.multiplicand.digits.length - 1);
      found.push({
        key: row * ROOM + column,
        step: `fact:${row}:${step}`,
        given: seen?.value || null,
        expected,
        among: FACTS,
      });
      if (seen === undefined || meant === undefined || expected === null) continue;
      found.push({
        key: row * ROOM + WHERE + column,
        step: `where:${row}:${step}`,
        given: seen.aside,
        expected: meant.square[1] - column,
        among: PLACES,
      });
    }
  }
  return found;
}
