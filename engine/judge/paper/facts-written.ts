import type { ActionOf } from '../../mat/action.ts';
import { isSameSquare, type Square } from '../../mat/geometry.ts';
import type { Sheet } from '../../mat/sheet.ts';
import { noted, withPaper } from '../changes.ts';
import { finding, NOTHING_YET, NOW, sceneWith, staleFinding, trueDue } from '../ledger.ts';
import type { Aspect, Finding, Ledger, Moment, Note, Plan, Scene } from '../scene.ts';
import { factStep, type Judged, squareFaults } from './facts-faults.ts';
import { keptSquares, readSquares, readSquaresOf } from './facts-kept.ts';
import { isDoubted, stands } from './facts-read.ts';
import { dueAt, entryAt, factAt, isHeld, lostOf, pairAt, valueAt } from './facts-row.ts';
import { markFaults } from './rows-written.ts';
import type { RowOfFacts, Squares } from './squares.ts';

/** Pairs of which a digit stands elsewhere, by its own word and by that of a fault. */
interface Astray {
  readonly named: readonly Square[];
  readonly misplaced: readonly Square[];
}
const NOTHING_ASTRAY: Astray = { named: [], misplaced: [] };

function astrayIn(squares: Squares, faults: readonly Judged[]): Astray {
  if (faults.length === 0 && squares.every(({ best }) => best.lost === 0)) return NOTHING_ASTRAY;
  const named = squares.flatMap(({ best }) => lostOf(best).map(({ of }) => of!));
  const misplaced = faults.filter(({ kind }) => kind === 'where').map(({ pair }) => pair);
  return named.length + misplaced.length === 0 ? NOTHING_ASTRAY : { named, misplaced };
}

function assess(scene: Scene, moment: Moment, findings: Finding[]): void {
  const { plan } = scene;
  const squares = readSquares(scene, moment);
  const faults = squareFaults(scene, squares);
  const astray = astrayIn(squares, faults);
  // The finish of a row asks for that row alone, unless what stands in it belongs elsewhere.
  const alone = moment.at === 'row' && faults.length === 0;
  for (let row = 0; row < plan.up.length; row += 1) {
    if (alone && row !== moment.row) continue;
    const read = squares[row]!;
    for (let column = 0; column < plan.across.length; column += 1) {
      const at = row * plan.columns + column;
      const step = plan.tables.fact[at];
      if (step === undefined) continue;
      const pair = pairAt(row, column);
      const held = isHeld(read.best, column) || isAmong(astray.named, pair);
      const elsewhere = isAmong(astray.misplaced, pair);
      findings[step] = factFinding(plan, read, column, held, elsewhere);
      findings[plan.tables.where[at]!] = held
        ? IN_PLACE
        : read.best.ends.row
          ? LEFT_OUT
          : NOTHING_YET;
    }
  }
  markFaults(faults, findings);
}

function isAmong(pairs: readonly Square[], pair: Square): boolean {
  for (let index = 0; index < pairs.length; index += 1) {
    if (isSameSquare(pairs[index]!, pair)) return true;
  }
  return false;
}

/** `held`: something stands, or stood, for the fact; `elsewhere`: its digits, or one of them, stand where they are not due. */
function factFinding(
  plan: Plan,
  { best, lapsed }: RowOfFacts,
  column: number,
  held: boolean,
  elsewhere: boolean,
): Finding {
  const { row, ends } = best;
  const due = dueAt(plan, best, column);
  if (!elsewhere && !held) {
    return ends.row && (due ?? 0) === 0
      ? finding('right', true, null, 0)
      : finding('none', false, null, due);
  }
  const value = valueAt(best, column);
  if (due === null) return finding('none', false, value, null);
  const follows = due !== trueDue(plan, pairAt(row, column));
  if (value === due && !follows) return RIGHT[due]!;
  const fact = factAt(plan, best, column);
  const whole = stands(lapsed, fact, 'units') && stands(lapsed, fact, 'tens');
  if (!ends.row && !whole) return finding('none', false, value, null);
  // What is right but stands elsewhere is as good as the due value.
  const own = whole && fact.covered.length === 0 ? value : due;
  return staleFinding(own !== trueDue(plan, fact.pair), own, due, own !== due);
}

/** Most facts are just right: the same finding for all that make as much. */
const RIGHT = Array.from({ length: 9 * 9 + 1 }, (_, due) => staleFinding(false, due, due, false));

/** Nothing written has no place yet: at the end the fact alone is missing. */
const LEFT_OUT = finding('right', true);
const IN_PLACE = finding('right', false);

/** Remembers how the squares read now: what is right on them stays right. `before`: what stood on them then. */
function latchedSince(before: Sheet['squares'], scene: Scene, moment: Moment): Ledger {
  const { ledger } = scene;
  const squares = keptSquares(scene, moment, before);
  return squares === ledger.onPaper.squares ? ledger : withPaper(ledger, { squares });
}

type Pen = ActionOf<'write'> | ActionOf<'rub'>;

const note: Note<Pen> = (before, after, action, act) => {
  if (!('square' in action)) return { ledger: before.ledger };
  const { plan } = before;
  const now = sceneWith(before, after);
  const ledger = latchedSince(before.position.paper.squares, now, NOW);
  if (action.do === 'rub') return { ledger };
  const { square, slot, digit: given } = action;
  const scene = ledger === before.ledger ? now : sceneWith(before, after, ledger);
  const read = readSquaresOf(scene, NOW, square[0]);
  // Nothing of a quiet row is part of a fault.
  const fault = read.quiet ? undefined : faultOf(squareFaults(scene, readSquares(scene, NOW)), act);
  if (fault !== undefined) return noted(ledger, fault.step, 'wrong', given, fault.due);
  const isUnits = (slot === 'own') !== read.best.swapped;
  const column = isUnits ? square[1] : square[1] - 1;
  // It may name another fact than that of its slot.
  if (entryAt(read.best, column, isUnits ? 'units' : 'tens') === undefined) return { ledger };
  const due = dueAt(plan, read.best, column);
  const pair = pairAt(square[0], column);
  const follows = due !== trueDue(plan, pair);
  const open = due === null || isDoubted(plan, read, act);
  const verdict = open ? 'neutral' : follows ? 'follows' : 'right';
  return noted(ledger, factStep(plan, pair), verdict, given, due);
};

function faultOf(faults: readonly Judged[], act: number): Judged | undefined {
  return faults.find(({ acts }) => acts.includes(act));
}

/** Facts may be written before their tiles lie. */
const noteTile: Note<ActionOf<'layTile'>> = (before, after) => {
  const { squares, touched } = after.paper;
  if (touched === 0) return { ledger: before.ledger };
  return { ledger: latchedSince(squares, sceneWith(before, after), NOW) };
};

/** Each fact of two digits that are not zero is written on the squares: its value, and where it stands. */
export const factsWritten: Aspect = {
  steps: (plan) =>
    plan.up.flatMap((up, row) =>
      plan.across.flatMap((across, column) =>
        up * across === 0
          ? []
          : [
              { id: `fact:${row}:${column}`, skill: 'fact' as const },
              { id: `where:${row}:${column}`, skill: 'place' as const },
            ],
      ),
    ),
  notes: { write: note, rub: note, layTile: noteTile },
  latch: (scene, moment) => latchedSince(scene.position.paper.squares, scene, moment),
  assess,
};
