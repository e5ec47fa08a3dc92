import type { ActionOf } from '../../mat/action.ts';
import type { Square } from '../../mat/geometry.ts';
import { finding, NOTHING_YET, sceneWith, trueDue } from '../ledger.ts';
import { remembered } from '../memo.ts';
import type { Aspect, Finding, Ledger, Moment, Note, Plan, Scene } from '../scene.ts';
import { withClaims } from './claims.ts';
import {
  digitDue,
  type Fact,
  factSlot,
  isRight,
  isTurned,
  readSquares,
  type Squares,
  writtenValue,
} from './facts-read.ts';
import type { Fault } from './line-reading.ts';
import { placed } from './pens.ts';
import { markFaults } from './rows-written.ts';
import { type Entry, PARTS, type Part } from './squares.ts';

type Judged = Fault & { readonly kind: 'fact' | 'where'; readonly pair: Square };

export function factStep(plan: Plan, pair: Square): number {
  return nearestStep(plan, pair, 'fact');
}

/** The pair's own step, else the nearest of its row, else of the nearest row; −1: the problem has no facts. */
function nearestStep(plan: Plan, [row, column]: Square, kind: 'fact' | 'where'): number {
  let best = -1;
  let nearest = Number.POSITIVE_INFINITY;
  for (let up = 0; up < plan.up.length; up += 1)
    for (let across = 0; across < plan.across.length; across += 1) {
      const step = plan.tables[kind][up * plan.columns + across] ?? -1;
      const distance = Math.abs(up - row) * plan.columns + Math.abs(across - column);
      if (step >= 0 && distance < nearest) [best, nearest] = [step, distance];
    }
  return best;
}

/** Right, or right when it was written and not written over since. */
function stands({ ledger, plan }: Scene, fact: Fact, part: Part): boolean {
  if (isRight(fact, part)) return true;
  const given = fact.written[part]?.digit;
  const before = ledger.factDigits[factSlot(plan, fact.pair, part)];
  return given === undefined
    ? before !== undefined && fact.covered.includes(part)
    : before === given;
}

/** What one slot lacks, and what it holds that is not due there. */
interface Amiss {
  readonly fact: Fact;
  readonly part: Part;
  readonly entry: Entry | undefined;
}

function amissOf(scene: Scene, facts: readonly Fact[]): Amiss[] {
  const amiss: Amiss[] = [];
  for (const fact of facts) {
    if (fact.due === null) continue;
    for (const part of PARTS) {
      if (!stands(scene, fact, part)) amiss.push({ fact, part, entry: fact.written[part] });
    }
  }
  return amiss;
}

/** Which fact and place of it are not as due: a wrong value spends `fact`, a right digit elsewhere `where`. */
export function squareFaults(scene: Scene, squares: Squares): readonly Judged[] {
  const { facts, astray, doubted } = squares;
  const faults: Judged[] = [];
  const all = amissOf(scene, facts);
  const turned = all.filter(({ fact }) => isTurned(fact));
  let rest = all.filter((each) => !turned.includes(each));
  for (const fact of new Set(turned.map((each) => each.fact)))
    faults.push(turnedFault(scene, fact));
  for (const entry of astray) {
    const place = lackingIn(rest).find(
      ({ fact, part }) => isPair(fact, entry.of!) && digitDue(fact.due!, part) === entry.digit,
    );
    rest = rest.filter((each) => each !== place);
    faults.push(strayFault(scene, facts, entry));
  }
  for (const each of rest.filter((some) => mayBelongElsewhere(scene, some))) {
    const home = nearestHome(lackingIn(rest), each.entry!);
    if (home === undefined) continue;
    rest = rest.filter((some) => some !== home && some !== each);
    faults.push(faultOf(scene, 'where', home.fact, [each.entry!], home.fact.due!));
  }
  for (const fact of new Set(rest.map((each) => each.fact))) {
    // Two wrong digits are one misremembered fact.
    const entries = rest.flatMap((each) => (each.fact === fact ? (each.entry ?? []) : []));
    if (entries.length === 0 && !fact.final) continue;
    faults.push(faultOf(scene, 'fact', fact, entries, fact.due!));
  }
  return withClaims(
    scene,
    faults.filter(({ step, acts }) => step >= 0 && !acts.some((act) => doubted.includes(act))),
  );
}

function lackingIn(rest: readonly Amiss[]): readonly Amiss[] {
  return rest.filter(({ entry }) => entry === undefined);
}

function isPair({ pair }: Fact, [row, column]: Square): boolean {
  return pair[0] === row && pair[1] === column;
}

function turnedFault(scene: Scene, fact: Fact): Judged {
  const entries = PARTS.flatMap((part) => fact.written[part] ?? []);
  return faultOf(scene, 'where', fact, entries, fact.due!);
}

/** A digit that names its pair: right for it and elsewhere, or of a wrong value. */
function strayFault(scene: Scene, facts: readonly Fact[], entry: Entry): Judged {
  const fact = facts.find((each) => isPair(each, entry.of!));
  const due = fact?.due ?? 0;
  const digits = PARTS.map((part) => digitDue(due, part));
  const kind = digits.includes(entry.digit) ? 'where' : 'fact';
  const home = fact ?? { pair: entry.of!, due, written: {}, covered: [], final: false };
  return faultOf(scene, kind, home, [entry], due);
}

/**
 * A digit where nothing is due, or over one that was right: it may have been meant for another pair. Beside a wrong
 * digit of the same fact it is part of that fact, and so it is while the fact is still being written.
 */
function mayBelongElsewhere(scene: Scene, { fact, part, entry }: Amiss): boolean {
  if (entry === undefined || entry.digit === 0 || entry.of !== undefined) return false;
  const beside = PARTS.find((each) => each !== part)!;
  if (fact.written[beside] !== undefined && !stands(scene, fact, beside)) return false;
  const wasRight = scene.ledger.factDigits[factSlot(scene.plan, fact.pair, part)] !== undefined;
  if (wasRight || fact.due === 0) return true;
  return fact.final && digitDue(fact.due!, part) === 0;
}

function nearestHome(lacking: readonly Amiss[], { square, digit }: Entry): Amiss | undefined {
  const distance = ({ fact: { pair } }: Amiss) =>
    30 * Math.abs(pair[0] - square[0]) + Math.abs(pair[1] - square[1]);
  return lacking
    .filter(({ fact, part }) => digitDue(fact.due!, part) === digit)
    .sort((one, other) => distance(one) - distance(other))[0];
}

function faultOf(
  { plan }: Scene,
  kind: Judged['kind'],
  fact: Fact,
  entries: readonly Entry[],
  due: number,
): Judged {
  const acts = entries.map(({ act }) => act).filter((act) => act >= 0);
  const given = writtenValue(fact.written);
  const step = nearestStep(plan, fact.pair, kind);
  return { kind, pair: fact.pair, step, at: -1, acts, given, due, missing: entries.length === 0 };
}

function assess(scene: Scene, moment: Moment, findings: Finding[]): void {
  const { plan } = scene;
  const squares = readSquares(scene, moment);
  const faults = squareFaults(scene, squares);
  for (const fact of squares.facts) {
    const [row, column] = fact.pair;
    const index = row * plan.columns + column;
    const step = column < 0 ? -1 : (plan.tables.fact[index] ?? -1);
    if (step < 0) continue;
    const elsewhere = faults.some((each) => each.kind === 'where' && isPair(fact, each.pair));
    findings[step] = factFinding(scene, squares, fact, elsewhere);
    findings[plan.tables.where[index]!] = whereFinding(squares, fact);
  }
  markFaults(faults, findings);
}

/** Something stands, or stood, for the fact. */
function holds({ astray }: Squares, { written, pair, covered }: Fact): boolean {
  if (covered.length > 0) return true;
  const strays = astray.some(({ of }) => of![0] === pair[0] && of![1] === pair[1]);
  return strays || written.units !== undefined || written.tens !== undefined;
}

/** `elsewhere`: its digits, or one of them, stand where they are not due. */
function factFinding(scene: Scene, squares: Squares, fact: Fact, elsewhere: boolean): Finding {
  const { due, final, written } = fact;
  const truth = trueDue(scene.plan, fact.pair);
  const value = writtenValue(written);
  if (!elsewhere && !holds(squares, fact)) {
    return final && (due ?? 0) === 0
      ? finding('right', true, null, 0)
      : finding('none', false, null, due);
  }
  if (due === null) return finding('none', false, value, null);
  const done = final || PARTS.every((part) => stands(scene, fact, part));
  if (!done) return finding('none', false, value, null);
  // What is right but stands elsewhere is as good as the due value.
  const covered = fact.covered.length > 0;
  const own = !covered && PARTS.every((part) => stands(scene, fact, part)) ? value : due;
  return { ...finding('right', own !== truth, own, due), stale: own !== due };
}

/** Nothing written has no place yet: at the end the fact alone is missing. */
function whereFinding(squares: Squares, fact: Fact): Finding {
  if (!holds(squares, fact)) return fact.final ? finding('right', true) : NOTHING_YET;
  return finding('right', false);
}

function withLatches(scene: Scene, { facts }: Squares): Ledger {
  const { ledger, plan } = scene;
  let { factDigits } = ledger;
  for (const fact of facts) {
    if (fact.due === null) continue;
    for (const part of PARTS) {
      const given = fact.written[part]?.digit;
      if (given === undefined || !isRight(fact, part)) continue;
      const slot = factSlot(plan, fact.pair, part);
      if (factDigits[slot] !== given) factDigits = placed(factDigits, slot, given);
    }
  }
  return factDigits === ledger.factDigits ? ledger : { ...ledger, factDigits };
}

function latchedNow(scene: Scene, moment: Moment): Ledger {
  const blank = scene.ledger.squarePens.every(({ columns }) => columns.length === 0);
  if (blank) return scene.ledger;
  return withLatches(scene, readSquares(scene, moment));
}

type Pen = ActionOf<'write'> | ActionOf<'rub'>;

const note: Note<Pen> = (before, after, action, act) => {
  const { ledger, plan } = before;
  if (!('square' in action)) return { ledger };
  const scene = sceneWith(before, after);
  const now: Moment = { at: 'now' };
  const squares = readSquares(scene, now);
  const next = withLatches(scene, squares);
  if (action.do === 'rub') return { ledger: next };
  const given = action.digit;
  const fault = squareFaults(scene, squares).find(({ acts }) => acts.includes(act));
  if (fault !== undefined) {
    const { step, due } = fault;
    return { ledger: next, remark: { step, verdict: 'wrong', given, due } };
  }
  const fact = squares.facts.find(({ written }) =>
    PARTS.some((part) => written[part]?.act === act),
  );
  if (fact === undefined) return { ledger: next };
  const follows = fact.due !== trueDue(plan, fact.pair);
  const open = fact.due === null || squares.doubted.includes(act);
  const verdict = open ? 'neutral' : follows ? 'follows' : 'right';
  return {
    ledger: next,
    remark: { step: factStep(plan, fact.pair), verdict, given, due: fact.due },
  };
};

/** Facts may be written before their tiles lie. */
const noteTile: Note<ActionOf<'layTile'>> = (before, after) => ({
  ledger: latchedNow(sceneWith(before, after), { at: 'now' }),
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

/** So many places, from the origin, have all their facts. */
export function factsReady(scene: Scene, moment: Moment): number {
  const { plan } = scene;
  const squares = readSquares(scene, moment);
  return remembered(scene.memo, 'facts ready', [squares], () => readyIn(plan, squares));
}

function readyIn(plan: Plan, { facts }: Squares): number {
  let ready = Number.POSITIVE_INFINITY;
  for (const fact of facts) {
    const [row, column] = fact.pair;
    const inside = row < plan.up.length && column < plan.across.length;
    const lacks =
      fact.due === null
        ? inside && trueDue(plan, fact.pair) > 0
        : PARTS.some((part) => fact.written[part] === undefined && !isRight(fact, part));
    if (lacks && !fact.final) ready = Math.min(ready, row + column);
  }
  return ready;
}
