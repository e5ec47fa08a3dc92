import type { ActionOf } from '../../mat/action.ts';
import { noted, withPaper } from '../changes.ts';
import { finding, NOTHING_YET, placed, sceneWith, trueDue } from '../ledger.ts';
import type { Aspect, Finding, Ledger, Moment, Note, Scene } from '../scene.ts';
import { factStep, isPair, squareFaults } from './facts-faults.ts';
import { isDoubted, readSquares, type Squares, stands } from './facts-read.ts';
import { type Fact, writtenValue } from './facts-row.ts';
import { markFaults } from './rows-written.ts';

const NOW: Moment = { at: 'now' };

function assess(scene: Scene, moment: Moment, findings: Finding[]): void {
  const { plan } = scene;
  const squares = readSquares(scene, moment);
  const faults = squareFaults(scene, squares);
  // The finish of a row asks for that row alone, unless what stands in it belongs elsewhere.
  const alone = moment.at === 'row' && faults.length === 0;
  for (let line = 0; line < squares.length; line += 1) {
    if (alone && line !== moment.row) continue;
    for (const fact of squares[line]!.found) {
      const [row, column] = fact.pair;
      const index = row * plan.columns + column;
      const step = column < 0 ? -1 : (plan.tables.fact[index] ?? -1);
      if (step < 0) continue;
      const elsewhere = faults.some((each) => each.kind === 'where' && isPair(fact, each.pair));
      const held = holds(squares, fact);
      findings[step] = factFinding(scene, fact, held, elsewhere);
      findings[plan.tables.where[index]!] = whereFinding(fact, held);
    }
  }
  markFaults(faults, findings);
}

/** Something stands, or stood, for the fact. */
function holds(squares: Squares, fact: Fact): boolean {
  if (fact.covered.length > 0 || fact.units !== undefined || fact.tens !== undefined) return true;
  for (const { lost } of squares) {
    for (const { of } of lost) if (isPair(fact, of!)) return true;
  }
  return false;
}

/** `elsewhere`: its digits, or one of them, stand where they are not due. */
function factFinding(scene: Scene, fact: Fact, held: boolean, elsewhere: boolean): Finding {
  const { due, final } = fact;
  if (!elsewhere && !held) {
    return final && (due ?? 0) === 0
      ? finding('right', true, null, 0)
      : finding('none', false, null, due);
  }
  const value = writtenValue(fact);
  if (due === null) return finding('none', false, value, null);
  const digits = scene.ledger.factDigits[fact.pair[0]];
  const whole = stands(digits, fact, 'units') && stands(digits, fact, 'tens');
  if (!final && !whole) return finding('none', false, value, null);
  // What is right but stands elsewhere is as good as the due value.
  const own = whole && fact.covered.length === 0 ? value : due;
  const follows = own !== trueDue(scene.plan, fact.pair);
  return { grade: 'right', follows, given: own, due, stale: own !== due };
}

/** Nothing written has no place yet: at the end the fact alone is missing. */
function whereFinding({ final }: Fact, held: boolean): Finding {
  if (!held) return final ? finding('right', true) : NOTHING_YET;
  return finding('right', false);
}

function withLatches({ ledger }: Scene, squares: Squares): Ledger {
  let { factDigits } = ledger;
  for (let row = 0; row < squares.length; row += 1) {
    const { right } = squares[row]!;
    if (right !== factDigits[row]) factDigits = placed(factDigits, row, right);
  }
  if (factDigits === ledger.factDigits) return ledger;
  return withPaper(ledger, { factDigits });
}

function latchedNow(scene: Scene, moment: Moment): Ledger {
  const blank = scene.ledger.squareRows.every(({ columns }) => columns.length === 0);
  if (blank) return scene.ledger;
  return withLatches(scene, readSquares(scene, moment));
}

type Pen = ActionOf<'write'> | ActionOf<'rub'>;

const note: Note<Pen> = (before, after, action, act) => {
  const { ledger, plan } = before;
  if (!('square' in action)) return { ledger };
  const scene = sceneWith(before, after);
  const squares = readSquares(scene, NOW);
  const next = withLatches(scene, squares);
  if (action.do === 'rub') return { ledger: next };
  const given = action.digit;
  const faults = squareFaults(scene, squares);
  const fault = faults.length === 0 ? undefined : faults.find(({ acts }) => acts.includes(act));
  if (fault !== undefined) {
    const { step, due } = fault;
    return noted(next, step, 'wrong', given, due);
  }
  const line = squares[action.square[0]]!;
  const fact = writtenBy(line.found, act);
  if (fact === undefined) return { ledger: next };
  const follows = fact.due !== trueDue(plan, fact.pair);
  const open = fact.due === null || isDoubted(line, act);
  const verdict = open ? 'neutral' : follows ? 'follows' : 'right';
  return noted(next, factStep(plan, fact.pair), verdict, given, fact.due);
};

function writtenBy(facts: readonly Fact[], act: number): Fact | undefined {
  for (let index = 0; index < facts.length; index += 1) {
    const { units, tens } = facts[index]!;
    if (units?.act === act || tens?.act === act) return facts[index];
  }
  return undefined;
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
