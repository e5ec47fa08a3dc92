import { LINES } from '../mat/sheet.ts';
import type { Status } from '../vocabulary.ts';
import { isOver } from './ledger.ts';
import { NO_LINE, rowLines } from './paper/lines.ts';
import type { Finding, Moment, Plan, Scene } from './scene.ts';
import type { Lifted, StepStatus } from './work.ts';

/** What the mat has answered and the child has asked for; undo takes none of it back. */
export interface Answers {
  readonly charged: ReadonlySet<number>;
  readonly hinted: ReadonlySet<number>;
}

const DONE_BY_THE_END = ['settled', 'slid', 'counted'];

export function statusOf(
  plan: Plan,
  step: number,
  found: Finding,
  moment: Moment,
  { charged, hinted }: Answers,
): Status {
  if (found.grade === 'right') {
    if (hinted.has(step)) return 'hinted';
    if (charged.has(step)) return 'corrected';
    return found.follows ? 'follows' : 'first';
  }
  if (moment.at === 'problem' || found.grade === 'wrong') return 'notRight';
  if (found.grade === 'none') return 'open';
  const later = DONE_BY_THE_END.includes(plan.scopes[step]!.kind) && !isOver(moment);
  return later ? 'open' : 'notRight';
}

export function stepStatuses(
  plan: Plan,
  findings: readonly Finding[],
  moment: Moment,
  answers: Answers,
): StepStatus[] {
  // Of the same problem most steps stand the same way in every work: they are told by the same words.
  const { told } = plan;
  const statuses = new Array<StepStatus>(plan.steps.length);
  for (let step = 0; step < plan.steps.length; step += 1) {
    const { given, due } = findings[step]!;
    const status = statusOf(plan, step, findings[step]!, moment, answers);
    let own = told[step];
    if (own === undefined || !tells(own, status, given, due)) {
      const { id, skill } = plan.steps[step]!;
      const values = { step: id, skill, given, due };
      own = { id, skill, status, reason: { key: REASONS[status], values } };
      told[step] = own;
    }
    statuses[step] = own;
  }
  return statuses;
}

function tells(
  { status: before, reason: { values } }: StepStatus,
  status: Status,
  given: Finding['given'],
  due: Finding['due'],
): boolean {
  return before === status && values['given'] === given && values['due'] === due;
}

/** Keys of the words that say why a step has its status. */
const REASONS: Readonly<Record<Status, string>> = {
  first: 'mark.first',
  corrected: 'mark.corrected',
  follows: 'mark.follows',
  hinted: 'mark.hinted',
  notRight: 'mark.notRight',
  open: 'mark.open',
};

/** Finished, nothing missing, and nothing that rests on a tile changed since. */
export function isComplete(plan: Plan, findings: readonly Finding[], moment: Moment): boolean {
  if (moment.at !== 'problem') return false;
  return findings.every(({ grade, stale }, step) => {
    if (grade === 'short') return !DONE_BY_THE_END.includes(plan.scopes[step]!.kind);
    return grade !== 'none' && stale !== true;
  });
}

/** Where on mat or paper a step lies, for what rests visibly lifted. */
export function liftedAt(scene: Scene, id: string): Lifted {
  const [kind = '', first = '', second = ''] = id.split(':');
  if (kind === 'tile') {
    return {
      step: id,
      tile: { edge: first === 'right' ? 'right' : 'bottom', index: Number(second) },
    };
  }
  if (kind === 'laid' || kind === 'counted' || kind === 'fact' || kind === 'where') {
    return { step: id, square: [Number(first), Number(second)] };
  }
  if (kind === 'prompt') return { step: id, prompt: Number(first) };
  if (kind === 'said' || kind === 'slid') return { step: id, row: Number(first) };
  if (kind === 'row' || kind === 'zero') {
    const { line } = rowLines(scene)[Number(first)]!;
    const place = kind === 'row' ? Number(second) : scene.plan.problem.mat.origin + Number(second);
    return line === NO_LINE
      ? { step: id, row: Number(first) }
      : { step: id, line: { line: LINES[line]!, place } };
  }
  if (kind === 'read' || kind === 'sum')
    return { step: id, line: { line: 'product', place: Number(first) } };
  return { step: id };
}
