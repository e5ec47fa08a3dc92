import type { ActionOf } from '../mat/action.ts';
import type { Desk } from '../mat/desk.ts';
import type { Square } from '../mat/geometry.ts';
import { pileValue } from '../mat/position.ts';
import { noted, withPlots } from './changes.ts';
import { evenOutDiagonal, mayPay, owes, settleByBars } from './debts.ts';
import {
  added,
  at,
  EMPTY_HEAP,
  finding,
  findingWith,
  isOver,
  laidStep,
  NOTHING_YET,
  ownDue,
  plotWith,
  replaced,
  sceneWith,
  squareAt,
  staleFinding,
  trueDue,
} from './ledger.ts';
import type {
  Aspect,
  Finding,
  Heap,
  Lay,
  Ledger,
  Moment,
  Note,
  Plan,
  Plot,
  Scene,
} from './scene.ts';

type Bars = ActionOf<'layBars'> | ActionOf<'liftBars'>;

/** Where the policy lets known facts be laid, the tens of a pair may lie on the square to its left. */
function pairOf({ problem }: Plan, { square, of }: Bars): Square {
  if (problem.policy.laying !== 'fact' || of === undefined) return square;
  return of[0] === square[0] && of[1] + 1 === square[1] ? of : square;
}

/** What a laying is worth at the place of its pair. */
function worth({ kind, count, weight }: Lay): number {
  return kind * count * (weight ?? 1);
}

const note: Note<Bars> = (before, after, action, act) => {
  const { plan } = before;
  const square = pairOf(plan, action);
  const ledger = laidLedger(before, after, action, square, act);
  const step = laidStep(plan, square);
  const due = ownDue(after, square);
  const plot = ledger.plots[at(plan, square)]!;
  const { laid } = plot;
  const judged =
    plainStanding(before, plot, due) ?? standingOf(sceneWith(before, after, ledger), square, false);
  if (judged.grade === 'right') {
    const verdict = due === trueDue(plan, square) ? 'right' : 'follows';
    return noted(ledger, step, verdict, laid, due);
  }
  const wrong = judged.grade === 'wrong' || judged.blame >= 0;
  const blamed = judged.blame >= 0 ? judged.blame : step;
  const verdict = wrong ? 'wrong' : 'neutral';
  return judged.kind
    ? { ledger, remark: { step: blamed, verdict, given: laid, due, skill: 'kind' } }
    : noted(ledger, blamed, verdict, laid, due);
};

function laidLedger(before: Scene, after: Desk, action: Bars, square: Square, act: number): Ledger {
  const { plan, ledger } = before;
  const index = at(plan, square);
  const here = at(plan, action.square);
  const count = action.do === 'layBars' ? action.count : -action.count;
  const plot = ledger.plots[index]!;
  const bars = { act, square: action.square, kind: action.kind, count };
  const lay: Lay = here === index ? bars : { ...bars, weight: 10 };
  const laid = plot.laid + worth(lay);
  const lays = laid === 0 ? NO_LAYS : count < 0 ? without(plot.lays, lay) : added(plot.lays, lay);
  const heap = heapAfter(plan, ledger.heaps[here]!, after, action.square, index);
  const heaps = heap === ledger.heaps[here] ? ledger.heaps : replaced(ledger.heaps, here, heap);
  const owing = owes(before);
  // What is as due pays for nothing and needs no payment.
  const settled = !owing && laid === ownDue(after, square);
  const now = plotWith(plot, lays, laid, settled ? laid : plot.right);
  const next = withPlots(ledger, replaced(ledger.plots, index, now), heaps);
  if (settled) return next;
  const evened = evenOutDiagonal(before, after, next, square, act);
  const paid = owing ? settleByBars(before, after, evened, act) : evened;
  return rightNow(paid, after, square, index);
}

/** Remembers the amount that is right for the tiles as they are now. */
function rightNow(ledger: Ledger, after: Desk, square: Square, index: number): Ledger {
  const plot = ledger.plots[index]!;
  if (plot.laid !== ownDue(after, square) || plot.right === plot.laid) return ledger;
  const right = plotWith(plot, plot.lays, plot.laid, plot.laid);
  return withPlots(ledger, replaced(ledger.plots, index, right));
}

/** Bars may lie before their tiles do: what the tiles now make right stays right. */
const noteTile: Note<ActionOf<'layTile'>> = ({ plan, ledger }, after) => {
  let latched = ledger;
  for (let index = 0; index < ledger.plots.length; index += 1) {
    if (ledger.plots[index]!.laid !== 0)
      latched = rightNow(latched, after, squareAt(plan, index), index);
  }
  return { ledger: latched };
};

/** Lifted bars are taken from the latest layings of their kind; what is of no laying stays as a lifting. */
export function without(lays: readonly Lay[], lifted: Lay): readonly Lay[] {
  let left = -lifted.count;
  const kept: Lay[] = [];
  for (const lay of lays.toReversed()) {
    const same = lay.kind === lifted.kind && lay.weight === lifted.weight;
    const taken = same && lay.count > 0 ? Math.min(left, lay.count) : 0;
    left -= taken;
    if (lay.count !== taken) kept.unshift({ ...lay, count: lay.count - taken });
  }
  return left === 0 ? kept : [...kept, { ...lifted, count: -left }];
}

export function heapAfter(plan: Plan, heap: Heap, after: Desk, square: Square, pair: number): Heap {
  if (pileValue(after.piles[square[0]]![square[1]]!) === 0) return EMPTY_HEAP;
  const rows = heap.rows | (1 << square[0]);
  if (heap.pairs.length === 0) {
    const own = plan.ownHeaps[at(plan, square)]!;
    return own.pairs[0] === pair && own.rows === rows ? own : { pairs: [pair], rows };
  }
  if (!heap.pairs.includes(pair)) return { pairs: added(heap.pairs, pair).sort(upwards), rows };
  return rows === heap.rows ? heap : { pairs: heap.pairs, rows };
}

function upwards(a: number, b: number): number {
  return a - b;
}

/**
 * Other pairs whose due this one laying is and that lay empty when it was laid: those still empty first,
 * then the nearest, its own row before others.
 */
function meantFor(scene: Scene, { square, kind, count, act }: Lay): readonly number[] {
  const { plan, position, ledger } = scene;
  const found: { index: number; distance: number }[] = [];
  for (let row = 0; row < plan.up.length; row += 1)
    for (let column = 0; column < plan.across.length; column += 1) {
      const index = row * plan.columns + column;
      if (ownDue(position, [row, column]) !== kind * count || index === at(plan, square)) continue;
      const { laid, lays } = ledger.plots[index]!;
      if (lays.length > 0 && lays[0]!.act < act) continue;
      const away = Math.abs(row - square[0]) * plan.columns + Math.abs(column - square[1]);
      found.push({ index, distance: laid === 0 ? away : away + plan.rows * plan.columns });
    }
  return found.sort((a, b) => a.distance - b.distance).map(({ index }) => index);
}

interface Standing {
  readonly grade: Finding['grade'];
  /** Step of another pair that pays for bars lying here; −1: none. */
  readonly blame: number;
  readonly act: number;
  readonly kind: boolean;
  readonly stale: boolean;
  /** Too little beside bars that another pair pays for: not asked for before the finish. */
  readonly beside: boolean;
}

function standing(grade: Finding['grade'], kind = false, stale = false, beside = false): Standing {
  return { grade, blame: -1, act: -1, kind, stale, beside };
}

const STANDS = standing('right');
const NOTHING = standing('none');
const TOO_LITTLE = standing('short');
const TOO_MUCH = standing('wrong');
const WRONG_KIND = standing('wrong', true);
const STALE = standing('right', false, true);

/** The standing of most layings: as due, or still on the way to it. null: it has to be looked into. */
function plainStanding({ plan, claims }: Scene, plot: Plot, due: number | null): Standing | null {
  const { laid, right } = plot;
  if (due === null || laid <= 0 || plan.problem.policy.laying === 'turns') return null;
  if (laid === due) return STANDS;
  return laid < due && laid !== right && claims.size === 0 ? TOO_LITTLE : null;
}

/** How the bars laid on a square stand against its own due. `last`: no more laying is to come. */
function standingOf(scene: Scene, square: Square, last: boolean): Standing {
  const { plan, position, ledger } = scene;
  const plot = ledger.plots[at(plan, square)]!;
  const due = ownDue(position, square) ?? (last ? 0 : null);
  if (due === null) return plot.laid === 0 ? NOTHING : TOO_LITTLE;
  if (wrongKind(scene, square, plot)) return WRONG_KIND;
  if (plot.laid === due) return due === 0 ? NOTHING : STANDS;
  if (plot.laid === plot.right) return STALE;
  if (plot.laid === 0) return NOTHING;
  const step = inside(plan, square) ? laidStep(plan, square) : -1;
  const { claims } = scene;
  const own = claims.size > 0 && plot.lays.some((lay) => claims.get(lay.act) === step);
  const claimed =
    claims.size === 0
      ? NO_LAYS
      : plot.lays.filter(
          ({ act, count }) => count > 0 && claims.has(act) && claims.get(act) !== step,
        );
  const rest = plot.laid - beadsOf(claimed);
  if (claimed.length === 0 && rest < due) return TOO_LITTLE;
  const unclaimed = own ? NO_LAYS : plot.lays.filter((lay) => !claims.has(lay.act));
  if (claimed.length > 0 && rest <= due) return besideClaims(scene, claimed, rest, due);
  // Too little is a pair being laid; only what is too much may belong elsewhere.
  for (const lay of rest > due ? unclaimed : []) {
    const left = rest - worth(lay);
    if (left < 0 || left > due || lay.count < 0) continue;
    const [meant] = meantFor(scene, lay);
    if (meant === undefined || (left !== due && ledger.plots[meant]!.laid !== 0)) continue;
    const grade = left === due ? (due === 0 ? 'none' : 'right') : left === 0 ? 'none' : 'short';
    const blame = laidStep(plan, squareAt(plan, meant));
    return { grade, blame, act: lay.act, kind: false, stale: false, beside: left !== due };
  }
  if (rest > due) {
    const paying = mayPay(ledger, square[0] + square[1], rest - due);
    return paying && !last ? TOO_LITTLE : TOO_MUCH;
  }
  return TOO_LITTLE;
}

const NO_LAYS: readonly Lay[] = [];

function inside(plan: Plan, square: Square): boolean {
  return square[0] < plan.up.length && square[1] < plan.across.length;
}

function beadsOf(lays: readonly Lay[]): number {
  return lays.reduce((sum, lay) => sum + worth(lay), 0);
}

/** Bars that an answer has charged to another pair stay there; where they are all that lies, nothing is owed twice. */
function besideClaims(scene: Scene, claimed: readonly Lay[], rest: number, due: number): Standing {
  const spent = claimed.every(({ act }) => {
    const [, row, column] = scene.plan.steps[scene.claims.get(act)!]!.id.split(':').map(Number);
    return scene.ledger.plots[at(scene.plan, [row!, column!])]!.laid !== 0;
  });
  if (rest === due || spent) return due === 0 ? NOTHING : STANDS;
  return standing(rest <= 0 ? 'none' : 'short', false, false, true);
}

/** By turns: the multiplicand's bar, and no other. */
function wrongKind({ plan, position }: Scene, [row, column]: Square, plot: Plot): boolean {
  if (plan.problem.policy.laying !== 'turns') return false;
  const kind = position.tiles.bottom[column] ?? null;
  if (kind === null || position.tiles.right[row] === null) return false;
  return plot.lays.some((lay) => lay.count > 0 && lay.kind !== kind);
}

function assess(scene: Scene, moment: Moment, findings: Finding[]): void {
  const { plan, ledger } = scene;
  // The finish of a row asks for that row alone, unless bars lie where they are not due.
  const alone = moment.at === 'row' && !ledger.plots.some((_, index) => isOff(scene, index));
  for (let row = 0; row < plan.up.length; row += 1) {
    if (alone && row !== moment.row) continue;
    for (let column = 0; column < plan.across.length; column += 1) {
      const index = row * plan.columns + column;
      findings[plan.tables.laid[index]!] = ownFinding(scene, moment, plan.squares[index]!);
    }
  }
  if (alone) return;
  for (let index = 0; index < ledger.plots.length; index += 1) {
    if (isOff(scene, index)) blameOthers(scene, moment, squareAt(plan, index), findings);
  }
}

/** Bars lie there that are not due; where it is right, or nothing lies there, nobody else is to be asked. */
function isOff({ plan, position, ledger }: Scene, index: number): boolean {
  const { laid, right } = ledger.plots[index]!;
  if (laid === 0 || (right === laid && plan.problem.policy.laying !== 'turns')) return false;
  return laid !== ownDue(position, squareAt(plan, index));
}

function ownFinding(scene: Scene, moment: Moment, square: Square): Finding {
  const { plan, position, ledger } = scene;
  const due = ownDue(position, square);
  const truth = trueDue(plan, square);
  const { laid, lays } = ledger.plots[at(plan, square)]!;
  const over = isOver(moment);
  if (due === null) return tileless(laid, truth, over);
  if (laid === due && due > 0 && plan.problem.policy.laying !== 'turns')
    return finding('right', due !== truth, laid, due);
  const stands = standingOf(scene, square, over);
  const follows = due !== truth;
  if (stands.stale) return staleFinding(laid !== truth, laid, due);
  if (due === 0 && stands.grade === 'none') {
    return finding(over || rowDone(scene, square[0]) ? 'right' : 'none', follows, 0, 0);
  }
  if (stands.beside && !over) return finding(stands.grade, follows, laid, null);
  const found = finding(stands.grade, follows, laid, due);
  if (stands.grade === 'wrong' && !stands.kind) {
    const last = lays.findLast(({ count }) => count > 0);
    if (last !== undefined) return findingWith(found, [last.act]);
  }
  return stands.kind ? findingWith(found, undefined, undefined, 'kind') : found;
}

/**
 * A square without both its tiles owes nothing and forbids nothing until the finish. Then bars that are
 * right for the true problem are let stand: the child saw the number, only the tile was forgotten.
 */
function tileless(laid: number, truth: number, over: boolean): Finding {
  if (!over) return laid === 0 ? NOTHING_YET : finding('none', false, laid, null);
  if (laid === 0) return finding('right', truth !== 0, 0, 0);
  return finding(laid === truth ? 'right' : 'wrong', false, laid, truth);
}

export function rowDone({ position, ledger }: Scene, row: number): boolean {
  return position.finished.rows.includes(row) || (ledger.disturbed & (1 << row)) !== 0;
}

/** Bars lying where they are not due: another pair pays, or the nearest one. */
function blameOthers(scene: Scene, moment: Moment, square: Square, findings: Finding[]): void {
  const { plan, ledger, position } = scene;
  const plot = ledger.plots[at(plan, square)]!;
  const over = isOver(moment);
  const own = inside(plan, square) ? laidStep(plan, square) : -1;
  const truthStands = own >= 0 && over && plot.laid === trueDue(plan, square);
  if (ownDue(position, square) === null && (!over || truthStands)) return;
  if (plot.laid !== ownDue(position, square)) {
    for (const lay of plot.lays) {
      const step = scene.claims.get(lay.act);
      if (step !== undefined && step !== own && lay.count > 0) blame(findings, step, lay, square);
    }
  }
  const { act, blame: blamed, grade } = standingOf(scene, square, over);
  if (blamed >= 0) {
    const lay = plot.lays.find((each) => each.act === act)!;
    blame(findings, blamed, lay, square);
  } else if (own < 0 && grade === 'wrong') {
    blame(findings, laidStep(plan, square), plot.lays.at(-1)!, square);
  }
}

function blame(findings: Finding[], step: number, lay: Lay, square: Square): void {
  const blames = [...(findings[step]?.blames ?? []), lay.act];
  findings[step] = findingWith(finding('wrong', false, lay.kind * lay.count, 0), blames, square[0]);
}

/** Bars for every pair of digits, by value (or, by policy, by turns); a zero pair is met by an empty square. */
export const laying: Aspect = {
  steps: (plan) =>
    plan.up.flatMap((_, row) =>
      plan.across.map((__, column) => ({ id: `laid:${row}:${column}`, skill: 'laying' as const })),
    ),
  notes: { layTile: noteTile, layBars: note, liftBars: note },
  assess,
};
