import type { ActionOf } from '../../mat/action.ts';
import type { Square } from '../../mat/geometry.ts';
import type { Slot } from '../../vocabulary.ts';
import { noted, withPaper } from '../changes.ts';
import { finding, NOTHING_YET, sceneWith, staleFinding, trueDue } from '../ledger.ts';
import type { Aspect, Finding, Ledger, Moment, Note, Plan, Scene } from '../scene.ts';
import { factStep, isPair, type Judged, squareFaults } from './facts-faults.ts';
import { isDoubted, isSwapped, readAgain, readSquares, stands } from './facts-read.ts';
import { writtenValue } from './facts-row.ts';
import { markFaults } from './rows-written.ts';
import type { Fact, RowOfFacts, Squares } from './squares.ts';

const NOW: Moment = { at: 'now' };

/** Pairs of which a digit stands elsewhere, by its own word and by that of a fault. */
interface Astray {
  readonly named: readonly Square[];
  readonly misplaced: readonly Square[];
}
const NOTHING_ASTRAY: Astray = { named: [], misplaced: [] };

function astrayIn(squares: Squares, faults: readonly Judged[]): Astray {
  if (faults.length === 0 && squares.every(({ best }) => best.lost.length === 0))
    return NOTHING_ASTRAY;
  const named = squares.flatMap(({ best }) => best.lost.map(({ of }) => of!));
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
  for (let line = 0; line < squares.length; line += 1) {
    if (alone && line !== moment.row) continue;
    const read = squares[line]!;
    const { found } = read.best;
    for (let index = 0; index < found.length; index += 1) {
      const fact = found[index]!;
      const [row, column] = fact.pair;
      const at = row * plan.columns + column;
      const step = column < 0 ? -1 : (plan.tables.fact[at] ?? -1);
      if (step < 0) continue;
      const held =
        fact.covered.length > 0 ||
        fact.units !== undefined ||
        fact.tens !== undefined ||
        isAmong(astray.named, fact);
      findings[step] = factFinding(plan, read, fact, held, isAmong(astray.misplaced, fact));
      findings[plan.tables.where[at]!] = held ? IN_PLACE : read.ends.row ? LEFT_OUT : NOTHING_YET;
    }
  }
  markFaults(faults, findings);
}

function isAmong(pairs: readonly Square[], fact: Fact): boolean {
  return pairs.length > 0 && pairs.some((pair) => isPair(fact, pair));
}

/** `held`: something stands, or stood, for the fact; `elsewhere`: its digits, or one of them, stand where they are not due. */
function factFinding(
  plan: Plan,
  { ends, lapsed }: RowOfFacts,
  fact: Fact,
  held: boolean,
  elsewhere: boolean,
): Finding {
  const { due } = fact;
  if (!elsewhere && !held) {
    return ends.row && (due ?? 0) === 0
      ? finding('right', true, null, 0)
      : finding('none', false, null, due);
  }
  const value = writtenValue(fact);
  if (due === null) return finding('none', false, value, null);
  const whole = stands(lapsed, fact, 'units') && stands(lapsed, fact, 'tens');
  if (!ends.row && !whole) return finding('none', false, value, null);
  // What is right but stands elsewhere is as good as the due value.
  const own = whole && fact.covered.length === 0 ? value : due;
  const follows = own !== trueDue(plan, fact.pair);
  return !follows && own === due ? RIGHT[due]! : staleFinding(follows, own, due, own !== due);
}

/** Most facts are just right: the same finding for all that make as much. */
const RIGHT = Array.from({ length: 9 * 9 + 1 }, (_, due) => staleFinding(false, due, due, false));

/** Nothing written has no place yet: at the end the fact alone is missing. */
const LEFT_OUT = finding('right', true);
const IN_PLACE = finding('right', false);

/** Remembers how the squares read now: what is right on them stays right. */
function latchedNow(scene: Scene, moment: Moment): Ledger {
  const { position, ledger } = scene;
  if (position.paper.touched === 0) return ledger;
  const squares = readSquares(scene, moment);
  return squares === ledger.squares ? ledger : withPaper(ledger, { squares });
}

type Pen = ActionOf<'write'> | ActionOf<'rub'>;

const note: Note<Pen> = (before, after, action, act) => {
  if (!('square' in action)) return { ledger: before.ledger };
  const { plan } = before;
  const now = sceneWith(before, after);
  const squares = readAgain(now, NOW);
  const ledger = withPaper(before.ledger, { squares });
  if (action.do === 'rub') return { ledger };
  const { square, slot, digit: given } = action;
  const read = squares[square[0]]!;
  // Nothing of a quiet row is part of a fault.
  const fault = read.quiet
    ? undefined
    : squareFaults(now, squares).find(({ acts }) => acts.includes(act));
  if (fault !== undefined) return noted(ledger, fault.step, 'wrong', given, fault.due);
  const fact = factOf(read, square, slot, act);
  if (fact === undefined) return { ledger };
  const follows = fact.due !== trueDue(plan, fact.pair);
  const open = fact.due === null || isDoubted(read, act);
  const verdict = open ? 'neutral' : follows ? 'follows' : 'right';
  return noted(ledger, factStep(plan, fact.pair), verdict, given, fact.due);
};

/** The fact that the digit belongs to, unless it names another than that of its slot. */
function factOf(read: RowOfFacts, [, column]: Square, slot: Slot, act: number): Fact | undefined {
  const { found } = read.best;
  const isUnits = (slot === 'own') !== isSwapped(read);
  const fact = found[column - (isUnits ? 0 : 1) - (found[0]?.pair[1] ?? 0)];
  return (isUnits ? fact?.units : fact?.tens)?.act === act ? fact : undefined;
}

/** Facts may be written before their tiles lie. */
const noteTile: Note<ActionOf<'layTile'>> = (before, after) => ({
  ledger: latchedNow(sceneWith(before, after), NOW),
});

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
  latch: latchedNow,
  assess,
};
