import type { ActionOf } from '../../mat/action.ts';
import { MAT_LIMITS, type Square } from '../../mat/geometry.ts';
import { noted, withPaper } from '../changes.ts';
import {
  finding,
  NOTHING_YET,
  placed,
  replaced,
  sceneWith,
  staleFinding,
  trueDue,
} from '../ledger.ts';
import { remembered, slots } from '../memo.ts';
import type { Aspect, Finding, Ledger, Moment, Note, Scene } from '../scene.ts';
import { factStep, isPair, type Judged, squareFaults } from './facts-faults.ts';
import {
  isDoubted,
  keepSquares,
  type RowOfFacts,
  readSquares,
  readWritten,
  type Squares,
  stands,
} from './facts-read.ts';
import { type Fact, type Written, writtenValue } from './facts-row.ts';
import { markFaults } from './rows-written.ts';
import type { Entry, SquareRow } from './squares.ts';

const NOW: Moment = { at: 'now' };

/** Pairs of which a digit stands elsewhere, by its own word and by that of a fault. */
interface Astray {
  readonly named: readonly Square[];
  readonly misplaced: readonly Square[];
}
const NOTHING_ASTRAY: Astray = { named: [], misplaced: [] };

function astrayIn(squares: Squares, faults: readonly Judged[]): Astray {
  if (faults.length === 0 && squares.every(({ lost }) => lost.length === 0)) return NOTHING_ASTRAY;
  const named = squares.flatMap(({ lost }) => lost.map(({ of }) => of!));
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
    const { found } = squares[line]!;
    const own = factFindings(scene, line, found, astray);
    for (let index = 0; index < found.length; index += 1) {
      const [row, column] = found[index]!.pair;
      const at = row * plan.columns + column;
      const step = column < 0 ? -1 : (plan.tables.fact[at] ?? -1);
      if (step < 0) continue;
      findings[step] = own[2 * index]!;
      findings[plan.tables.where[at]!] = own[2 * index + 1]!;
    }
  }
  markFaults(faults, findings);
}

const FINDINGS = slots(MAT_LIMITS.rows.most);

/** Two a fact: its value, and where it stands. While nothing is astray, a row has them of itself alone. */
function factFindings(
  scene: Scene,
  row: number,
  facts: readonly Fact[],
  astray: Astray,
): readonly Finding[] {
  const make = () => findingsOf(scene, facts, astray);
  if (astray !== NOTHING_ASTRAY) return make();
  return remembered(scene.memo, FINDINGS + row, make, facts, scene.ledger.factDigits[row]);
}

function findingsOf(scene: Scene, facts: readonly Fact[], { named, misplaced }: Astray): Finding[] {
  const findings: Finding[] = [];
  for (let index = 0; index < facts.length; index += 1) {
    const fact = facts[index]!;
    const held =
      fact.covered.length > 0 ||
      fact.units !== undefined ||
      fact.tens !== undefined ||
      named.some((pair) => isPair(fact, pair));
    const elsewhere = misplaced.some((pair) => isPair(fact, pair));
    findings.push(factFinding(scene, fact, held, elsewhere), whereFinding(fact, held));
  }
  return findings;
}

/** `held`: something stands, or stood, for the fact; `elsewhere`: its digits, or one of them, stand where they are not due. */
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
  return staleFinding(follows, own, due, own !== due);
}

/** Nothing written has no place yet: at the end the fact alone is missing. */
function whereFinding({ final }: Fact, held: boolean): Finding {
  if (!held) return final ? LEFT_OUT : NOTHING_YET;
  return IN_PLACE;
}

const LEFT_OUT = finding('right', true);
const IN_PLACE = finding('right', false);

/** What is right on the squares stays right. */
function withLatches({ factDigits }: Ledger, squares: Squares): Ledger['factDigits'] {
  let latched = factDigits;
  for (let row = 0; row < squares.length; row += 1) {
    const { right } = squares[row]!;
    if (right !== latched[row]) latched = placed(latched, row, right);
  }
  return latched;
}

function latchedNow(scene: Scene, moment: Moment): Ledger {
  const { position, ledger } = scene;
  if (position.paper.touched === null) return ledger;
  const factDigits = withLatches(ledger, readSquares(scene, moment));
  return factDigits === ledger.factDigits ? ledger : withPaper(ledger, { factDigits });
}

type Pen = ActionOf<'write'> | ActionOf<'rub'>;

const note: Note<Pen> = (before, after, action, act) => {
  if (!('square' in action)) return { ledger: before.ledger };
  const { plan } = before;
  const { square, slot } = action;
  const [row, column] = square;
  const entry =
    action.do === 'rub' ? undefined : { digit: action.digit, of: action.of, square, slot, act };
  const written = { column, slot, entry };
  const line = rowWith(before.ledger.squareRows[row]!, written);
  const squares = readWritten(before, after, row, line, written);
  const ledger = withPaper(before.ledger, {
    squareRows: replaced(before.ledger.squareRows, row, line),
    factDigits: withLatches(before.ledger, squares),
  });
  keepSquares(before, ledger, squares);
  if (entry === undefined) return { ledger };
  const given = entry.digit;
  const fault = squares.every(isQuiet)
    ? undefined
    : squareFaults(sceneWith(before, after, ledger), squares).find(({ acts }) =>
        acts.includes(act),
      );
  if (fault !== undefined) return noted(ledger, fault.step, 'wrong', given, fault.due);
  const fact = factOf(squares[row]!, entry);
  if (fact === undefined) return { ledger };
  const follows = fact.due !== trueDue(plan, fact.pair);
  const open = fact.due === null || isDoubted(squares[row]!, act);
  const verdict = open ? 'neutral' : follows ? 'follows' : 'right';
  return noted(ledger, factStep(plan, fact.pair), verdict, given, fact.due);
};

function rowWith({ own, fromRight }: SquareRow, { column, slot, entry }: Written): SquareRow {
  return slot === 'own'
    ? { own: replaced(own, column, entry), fromRight }
    : { own, fromRight: replaced(fromRight, column, entry) };
}

function isQuiet({ quiet }: RowOfFacts): boolean {
  return quiet;
}

/** The fact that the digit belongs to, unless it names another than that of its slot. */
function factOf({ found, swapped }: RowOfFacts, entry: Entry): Fact | undefined {
  const part = (entry.slot === 'own') === swapped ? 'tens' : 'units';
  const column = entry.square[1] - (part === 'units' ? 0 : 1);
  const fact = found[column - (found[0]?.pair[1] ?? 0)];
  return fact?.[part] === entry ? fact : undefined;
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
