import type { ActionOf } from '../mat/action.ts';
import { MAT_LIMITS } from '../mat/geometry.ts';
import { amountText } from '../numerals/numeral.ts';
import { noted, withReadings } from './changes.ts';
import { finding, isOver, NOTHING_YET, placed, sceneWith } from './ledger.ts';
import { remembered, slots } from './memo.ts';
import { ownRow, rowLaid, sayable, trueRow } from './rows.ts';
import type { Aspect, Finding, Ledger, Moment, Note, Plan, Scene } from './scene.ts';

const NUMBER = /^\d+(?:\.\d+)?$/;

/** A said number in units of 10^origin; null if it is none or finer than the mat. */
export function saidAmount(plan: Plan, text: string): bigint | null {
  if (!NUMBER.test(text)) return null;
  const { origin } = plan.problem.mat;
  const [whole = '', written = ''] = text.split('.');
  const decimals = written.replace(/0+$/, '');
  if (decimals.length > -origin) return null;
  return BigInt(whole + decimals.padEnd(-origin, '0'));
}

/** What was said; said just as it is due, no number has to be made of its text. */
function amountSaid(scene: Scene, row: number, text: string): bigint | null {
  const own = ownRow(scene, row);
  return own >= 0n && text === dueText(scene, row, own) ? own : saidAmount(scene.plan, text);
}

function rightNow(scene: Scene, row: number, text: string): boolean {
  const amount = amountSaid(scene, row, text);
  return amount !== null && sayable(scene, row).includes(amount);
}

function latched(scene: Scene, row: number, text: string): Ledger {
  const follows = amountSaid(scene, row, text) !== trueRow(scene.plan, row);
  const entry = { given: text, follows };
  return withReadings(scene.ledger, { said: placed(scene.ledger.readings.said, row, entry) });
}

/** Said of a row that still lacks bars: right after all if nothing more comes to it. */
function rightThen({ plan, ledger }: Scene, row: number, text: string): Ledger {
  const entry = { given: `${text} of ${laidOn(plan, ledger, row)}`, follows: true };
  return withReadings(ledger, { saidThen: placed(ledger.readings.saidThen, row, entry) });
}

function wasRight({ plan, ledger }: Scene, row: number, text: string): boolean {
  return ledger.readings.saidThen[row]?.given === `${text} of ${laidOn(plan, ledger, row)}`;
}

function laidOn(plan: Plan, { plots }: Ledger, row: number): string {
  const first = row * plan.columns;
  return plots
    .slice(first, first + plan.columns)
    .map(({ laid }) => laid)
    .join();
}

function dueText(scene: Scene, row: number, due = ownRow(scene, row)): string {
  const { origin } = scene.plan.problem.mat;
  return remembered(scene.memo, TEXTS + row, () => amountText(due, origin), due);
}

const TEXTS = slots(MAT_LIMITS.rows.most);

const note: Note<ActionOf<'say'>> = (before, after, action) => {
  const { ledger, plan } = before;
  if ('prompt' in action) return { ledger };
  const step = plan.tables.said[action.row];
  if (step === undefined) return { ledger };
  const scene = sceneWith(before, after);
  const { row, answer } = action;
  const right = rightNow(scene, row, answer);
  const due = right ? answer : dueText(scene, row);
  if (!rowLaid(scene, row)) {
    const kept = right ? rightThen(scene, row, answer) : ledger;
    return noted(kept, step, 'neutral', answer, due);
  }
  if (!right) return noted(ledger, step, 'wrong', answer, due);
  const next = latched(scene, row, answer);
  const verdict = next.readings.said[row]!.follows ? 'follows' : 'right';
  return noted(next, step, verdict, answer, due);
};

function asked(scene: Scene, moment: Moment, row: number): boolean {
  if (isOver(moment)) return true;
  return (moment.at === 'row' && moment.row === row) || rowLaid(scene, row);
}

function findingOf(scene: Scene, moment: Moment, row: number): Finding {
  const { position, ledger } = scene;
  const text = position.said.rows[row];
  if (text === undefined) return unsaid(scene, moment, row);
  const before = ledger.readings.said[row];
  if (before?.given === text) return finding('right', before.follows, text, text);
  if (!asked(scene, moment, row)) return finding('none', false, text, null);
  const right = rightNow(scene, row, text) || wasRight(scene, row, text);
  if (!right) return finding('wrong', false, text, dueText(scene, row));
  const follows = amountSaid(scene, row, text) !== trueRow(scene.plan, row);
  return finding('right', follows, text, text);
}

/** A row that makes nothing need not be said; with several rows an unsaid row follows. */
function unsaid(scene: Scene, moment: Moment, row: number): Finding {
  if (!isOver(moment)) return NOTHING_YET;
  const own = ownRow(scene, row);
  const due = dueText(scene, row, own);
  if (own === 0n) {
    return finding('right', trueRow(scene.plan, row) !== 0n, null, due);
  }
  return finding(scene.plan.up.length > 1 ? 'right' : 'none', true, null, due);
}

function latch(scene: Scene, moment: Moment): Ledger {
  let { ledger } = scene;
  const { rows } = scene.position.said;
  for (let row = 0; row < scene.plan.rows; row += 1) {
    const text = rows[row];
    if (text === undefined) continue;
    if (scene.plan.tables.said[row] === undefined || !asked(scene, moment, row)) continue;
    if (ledger.readings.said[row]?.given === text) continue;
    if (rightNow(scene, row, text))
      ledger = latched(sceneWith(scene, scene.position, ledger), row, text);
  }
  return ledger;
}

/** Each row's partial product is said from the mat. */
export const saying: Aspect = {
  steps: (plan) =>
    plan.problem.policy.readRows
      ? plan.up.map((_, row) => ({ id: `said:${row}`, skill: 'saying' as const }))
      : [],
  notes: { say: note },
  latch,
  assess: (scene, moment, findings) => {
    for (let row = 0; row < scene.plan.up.length; row += 1) {
      const step = scene.plan.tables.said[row];
      if (moment.at === 'row' && moment.row !== row) continue;
      if (step !== undefined) findings[step] = findingOf(scene, moment, row);
    }
  },
};
