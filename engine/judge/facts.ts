import type { ActionOf } from '../mat/action.ts';
import type { Desk } from '../mat/desk.ts';
import type { Square } from '../mat/geometry.ts';
import { withDebts, withPlots } from './changes.ts';
import { paid } from './debts.ts';
import { isMisplaced, isPart, isSame, rightWays, type Shape, shapeOf } from './fact-shape.ts';
import { heapAfter, rowDone, without } from './laying.ts';
import {
  added,
  amountAt,
  at,
  finding,
  isOver,
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
  Lay,
  Ledger,
  Moment,
  Note,
  Plan,
  Plot,
  Remark,
  Scene,
} from './scene.ts';
import type { Step } from './work.ts';

type Bars = ActionOf<'layBars'> | ActionOf<'liftBars'>;

/** The pair that bars belong to: as the page says, else that of the square where they lie. */
function pairOf({ up, across }: Plan, { square, of }: Bars): Square {
  return of !== undefined && of[0] < up.length && of[1] < across.length ? of : square;
}

/** `fact` of the pair, `laid` of a zero pair; outside the problem the nearest of the row. */
export function factStep(plan: Plan, [row, column]: Square): number {
  const nearRow = Math.min(row, plan.up.length - 1);
  const nearColumn = Math.min(column, plan.across.length - 1);
  const index = nearRow * plan.columns + nearColumn;
  return plan.tables.fact[index] ?? plan.tables.laid[index] ?? -1;
}

function whereStep(plan: Plan, [row, column]: Square): number {
  return plan.tables.where[row * plan.columns + column] ?? -1;
}

const note: Note<Bars> = (before, after, action, act) => {
  const { plan } = before;
  const pair = pairOf(plan, action);
  const ledger = laidFor(before, after, action, act, pair);
  const scene = sceneWith(before, after, ledger);
  return { ledger, remark: remarkOf(scene, pair) };
};

function laidFor(
  { plan, ledger }: Scene,
  after: Desk,
  action: Bars,
  act: number,
  pair: Square,
): Ledger {
  const { square, kind } = action;
  const index = at(plan, pair);
  const count = action.do === 'layBars' ? action.count : -action.count;
  const plot = ledger.plots[index]!;
  const lay: Lay = { act, square, kind, count };
  const lays = count < 0 ? lifted(plot.lays, lay) : added(plot.lays, lay);
  const plots = replaced(
    ledger.plots,
    index,
    plotWith(plot, lays, plot.laid + kind * count, plot.right),
  );
  const here = at(plan, square);
  const heap = heapAfter(plan, ledger.heaps[here]!, after, square, index);
  const heaps = replaced(ledger.heaps, here, heap);
  return rightNow(plan, payByBars(plan, withPlots(ledger, plots, heaps), index), after, pair);
}

/** Bars are lifted from the square where they lie. */
function lifted(lays: readonly Lay[], lay: Lay): readonly Lay[] {
  const [row, column] = lay.square;
  const here = lays.filter(({ square }) => square[0] === row && square[1] === column);
  return [...lays.filter((each) => !here.includes(each)), ...without(here, lay)];
}

/** What lies beside a fact that was right may pay a debt whole; then the fact lies as it did. */
function payByBars(plan: Plan, ledger: Ledger, index: number): Ledger {
  const plot = ledger.plots[index]!;
  const right = plot.rightLays ?? (trueDue(plan, squareAt(plan, index)) === 0 ? [] : undefined);
  if (ledger.debts.length === 0 || right === undefined) return ledger;
  const debts = paid(ledger.debts, amountOf(plot.lays) - amountOf(right));
  if (debts === null) return ledger;
  const laid = right.reduce((sum, { kind, count }) => sum + kind * count, 0);
  const plots = replaced(ledger.plots, index, plotWith(plot, right, laid, plot.right));
  return withDebts(ledger, debts, ledger.halves, plots);
}

function amountOf(lays: readonly Lay[]): bigint {
  return lays.reduce(
    (sum, { square, kind, count }) => sum + amountAt(kind * count, square[0] + square[1]),
    0n,
  );
}

function rightNow(plan: Plan, ledger: Ledger, position: Desk, pair: Square): Ledger {
  const index = at(plan, pair);
  const plot = ledger.plots[index]!;
  const due = ownDue(position, pair);
  if (due === null || due === 0 || !isRight(plan, pair, plot, due)) return ledger;
  const { lays, laid, right, counted } = plot;
  const latched = { lays, laid, right, counted, rightLays: lays };
  return withPlots(ledger, replaced(ledger.plots, index, latched));
}

function isRight(plan: Plan, pair: Square, plot: Plot, due: number): boolean {
  const { bySquare } = shapeOf(plan, plot.lays);
  return rightWays(plan, pair, due).some((way) => isSame(bySquare, way));
}

/** Bars may lie before their tiles do: what the tiles now make right stays right. */
const noteTile: Note<ActionOf<'layTile'>> = ({ plan, ledger }, after) => {
  let latched = ledger;
  for (const [index, plot] of ledger.plots.entries()) {
    if (plot.lays.length > 0) latched = rightNow(plan, latched, after, squareAt(plan, index));
  }
  return { ledger: latched };
};

function remarkOf(scene: Scene, pair: Square): Remark {
  const { plan, position } = scene;
  const given = scene.ledger.plots[at(plan, pair)]!.laid;
  const due = ownDue(position, pair);
  const judged = judgePair(scene, pair, false);
  const where = judged.fact !== 'wrong' && judged.where === 'wrong';
  const step = where ? whereStep(plan, pair) : factStep(plan, pair);
  const wrong = where || judged.fact === 'wrong';
  const right =
    judged.fact === 'right' ? (due === trueDue(plan, pair) ? 'right' : 'follows') : 'neutral';
  return { step, verdict: wrong ? 'wrong' : right, given, due };
}

interface Judged {
  readonly fact: Finding['grade'];
  readonly where: Finding['grade'];
  readonly stale?: boolean;
}

const RIGHT: Judged = { fact: 'right', where: 'right' };
const NONE: Judged = { fact: 'none', where: 'none' };

/** A wrong value spends the fact, right digits on wrong squares the place; never both. `last`: no more is to come. */
function judgePair(scene: Scene, pair: Square, last: boolean): Judged {
  const { plan, position, ledger } = scene;
  const plot = ledger.plots[at(plan, pair)]!;
  const due = ownDue(position, pair);
  if (due === null) return NONE;
  const shape = shapeOf(plan, plot.lays);
  if (shape.bySquare.size === 0) return due === 0 ? RIGHT : NONE;
  if (due === 0) return { fact: 'wrong', where: 'right' };
  const ways = rightWays(plan, pair, due);
  if (ways.some((way) => isSame(shape.bySquare, way))) return RIGHT;
  if (
    plot.rightLays !== undefined &&
    isSame(shape.bySquare, shapeOf(plan, plot.rightLays).bySquare)
  ) {
    return { fact: 'right', where: 'right', stale: true };
  }
  if (last && isMisplaced(shape, due, true)) return whoPays(scene, pair, true);
  if (ways.some((way) => isPart(shape.bySquare, way))) return { fact: 'short', where: 'none' };
  // Bars beside a fact that was right may be the beginning of a mend.
  if (!last && plot.rightLays !== undefined && ledger.debts.length > 0)
    return { fact: 'short', where: 'none' };
  return whoPays(scene, pair, isMisplacedHere(shape, due, last));
}

function isMisplacedHere(shape: Shape, due: number, last: boolean): boolean {
  return isMisplaced(shape, due, true) || (!last && isMisplaced(shape, due, false));
}

/** What an answer has charged to one of the two steps stays there. */
function whoPays({ plan, charged }: Scene, pair: Square, misplaced: boolean): Judged {
  const fact = charged.has(factStep(plan, pair));
  const where = charged.has(whereStep(plan, pair));
  const placed = fact === where ? misplaced : where;
  return placed ? { fact: 'right', where: 'wrong' } : { fact: 'wrong', where: 'none' };
}

function assess(scene: Scene, moment: Moment, findings: Finding[]): void {
  const { plan } = scene;
  for (let row = 0; row < plan.up.length; row += 1) {
    const last = isOver(moment) || (moment.at === 'row' && moment.row === row);
    for (let column = 0; column < plan.across.length; column += 1) {
      assessPair(scene, moment, [row, column], last, findings);
    }
  }
  if (isOver(moment)) outside(scene, findings);
}

function assessPair(
  scene: Scene,
  moment: Moment,
  pair: Square,
  last: boolean,
  findings: Finding[],
): void {
  const { plan, position, ledger } = scene;
  const truth = trueDue(plan, pair);
  const due = ownDue(position, pair);
  const { laid, lays } = ledger.plots[at(plan, pair)]!;
  if (truth === 0) {
    findings[factStep(plan, pair)] = zeroPair(scene, pair, last);
    return;
  }
  if (due === null) {
    putTileless(scene, moment, pair, findings);
    return;
  }
  const judged = judgePair(scene, pair, last);
  const follows = due !== truth;
  const open = lays.length === 0 && due === 0 && !last && !rowDone(scene, pair[0]);
  findings[factStep(plan, pair)] = judged.stale
    ? staleFinding(follows, laid, due)
    : finding(open ? 'none' : judged.fact, follows, laid, open ? null : due);
  // The place of what is missing or wrong in itself is not asked for.
  const settled = last && judged.where === 'none';
  const where = settled ? finding('right', true) : finding(open ? 'none' : judged.where, follows);
  findings[whereStep(plan, pair)] = where;
}

/** Nothing is laid for a zero; for a slipped tile that makes something, what it makes. */
function zeroPair(scene: Scene, pair: Square, last: boolean): Finding {
  const due = ownDue(scene.position, pair);
  const { laid, lays } = scene.ledger.plots[at(scene.plan, pair)]!;
  if (due === null) return finding(last && lays.length === 0 ? 'right' : 'none', false, laid, null);
  if (due === 0 && lays.length === 0) {
    return finding(last || rowDone(scene, pair[0]) ? 'right' : 'none', false, 0, 0);
  }
  const { fact, where } = judgePair(scene, pair, last);
  return finding(where === 'wrong' ? 'wrong' : fact, true, laid, due);
}

/** A square without both its tiles owes nothing; bars that are right for the true problem are let stand at the finish. */
function putTileless(scene: Scene, moment: Moment, pair: Square, findings: Finding[]): void {
  const { plan, ledger } = scene;
  const plot = ledger.plots[at(plan, pair)]!;
  const truth = trueDue(plan, pair);
  const stands = plot.lays.length === 0 || isRight(plan, pair, plot, truth);
  const grade = isOver(moment) ? (stands ? 'right' : 'wrong') : 'none';
  const due = isOver(moment) ? truth : null;
  findings[factStep(plan, pair)] = finding(grade, plot.lays.length === 0, plot.laid, due);
  const where = isOver(moment) ? 'right' : 'none';
  findings[whereStep(plan, pair)] = finding(where, plot.lays.length === 0);
}

/** Bars laid for no pair of the problem belong to the nearest of their row. */
function outside({ plan, ledger, position }: Scene, findings: Finding[]): void {
  for (const [index, { lays, laid }] of ledger.plots.entries()) {
    const pair = squareAt(plan, index);
    if (pair[0] < plan.up.length && pair[1] < plan.across.length) continue;
    const due = ownDue(position, pair) ?? 0;
    if (lays.length === 0 || laid === 0 || isRight(plan, pair, ledger.plots[index]!, due)) continue;
    findings[factStep(plan, pair)] = finding('wrong', false, laid, due);
  }
}

/** Each known fact laid in bars: its value is one step, its squares another; zeros are left empty. */
export const facts: Aspect = {
  steps: (plan) =>
    plan.up.flatMap((up, row) =>
      plan.across.flatMap((across, column): Step[] => {
        const id = `${row}:${column}`;
        if (up * across === 0) return [{ id: `laid:${id}`, skill: 'laying' }];
        return [
          { id: `fact:${id}`, skill: 'fact' },
          { id: `where:${id}`, skill: 'place' },
        ];
      }),
    ),
  notes: { layTile: noteTile, layBars: note, liftBars: note },
  assess,
};
