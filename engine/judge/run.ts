import type { Action } from '../mat/action.ts';
import { applyOnDesk } from '../mat/apply.ts';
import { type Desk, emptyDesk, shownOf } from '../mat/desk.ts';
import type { Problem } from '../problem.ts';
import type { RefusalCode } from '../vocabulary.ts';
import { charges, findingsOf, momentOf } from './findings.ts';
import { emptyLedger, NOW, sceneWith } from './ledger.ts';
import { blankMemo, type Memo } from './memo.ts';
import { makePlan } from './plan.ts';
import type { Finding, Ledger, Moment, Note, Plan, Scene } from './scene.ts';
import { type NotesByName, noteAction, notesOf, type StageRules } from './stage.ts';
import { isComplete, liftedAt, stepStatuses } from './status.ts';
import type { Judgement, LogEntry, Work } from './work.ts';

interface State {
  readonly position: Desk;
  readonly ledger: Ledger;
  readonly lastAct: number;
}

/** One work being done: the state, the states to go back to, and what no undo takes back. */
export interface Run {
  readonly stage: StageRules;
  readonly plan: Plan;
  readonly notes: NotesByName;
  state: State;
  readonly past: State[];
  readonly log: LogEntry[];
  readonly judgements: Judgement[];
  readonly charged: Set<number>;
  readonly hinted: Set<number>;
  /** Replaced when it changes, never changed itself. */
  claims: ReadonlyMap<number, number>;
  readonly memo: Memo;
}

export function startRun(problem: Problem, stage: StageRules): Run {
  const { plan, notes, state } = groundOf(problem, stage);
  return {
    stage,
    plan,
    notes,
    state,
    past: [],
    log: [],
    judgements: [],
    charged: new Set(),
    hinted: new Set(),
    claims: NO_CLAIMS,
    memo: blankMemo(),
  };
}

/** What all works of a problem start from: nothing of it is ever changed, but what the plan remembers of itself. */
interface Ground {
  readonly plan: Plan;
  readonly notes: NotesByName;
  readonly state: State;
}

const NO_NOTES: readonly Note[] = [];
const NO_CLAIMS: ReadonlyMap<number, number> = new Map();
const GROUNDS = new WeakMap<Problem, Ground>();

/** A class works the same problem: its steps are listed once, and nobody needs an empty mat of one's own. */
function groundOf(problem: Problem, stage: StageRules): Ground {
  const known = GROUNDS.get(problem);
  if (known !== undefined) return known;
  const plan = makePlan(problem, stage.aspects);
  const state = { position: emptyDesk(problem.mat), ledger: emptyLedger(plan), lastAct: -1 };
  const ground = { plan, notes: notesOf(stage), state };
  GROUNDS.set(problem, ground);
  return ground;
}

/** A run that may go on without changing this one. */
export function copyRun(run: Run): Run {
  const { stage, plan, notes, state, claims, memo } = run;
  return {
    stage,
    plan,
    notes,
    state,
    past: run.past.slice(),
    log: run.log.slice(),
    judgements: run.judgements.slice(),
    charged: new Set(run.charged),
    hinted: new Set(run.hinted),
    claims,
    memo,
  };
}

export function sceneOf(run: Run): Scene {
  const { plan, state, claims, charged, memo } = run;
  const { position, ledger, lastAct } = state;
  return { plan, position, ledger, claims, charged, lastAct, memo };
}

/** Done as said, or the reason why real material could not. */
export function physicsOf(run: Run, action: Action): Desk | RefusalCode {
  const { position } = run.state;
  switch (action.do) {
    case 'undo':
      if (position.finished.problem) return 'finished';
      return run.past.at(-1)?.position ?? 'nothingToUndo';
    case 'hint':
      if (action.step !== undefined && !run.plan.indexOf.has(action.step)) return 'noSuchStep';
  }
  return applyOnDesk(run.plan.problem, position, action, run.log.length);
}

/** Does one action: physics, then what the judge makes of it, then the mat's answer where one is due. */
export function advance(run: Run, action: Action): void {
  const after = physicsOf(run, action);
  if (typeof after === 'string') {
    run.log.push({ action, refused: after });
    return;
  }
  const act = run.log.length;
  run.log.push({ action });
  let asked = false;
  switch (action.do) {
    case 'undo':
      run.state = run.past.pop()!;
      break;
    case 'hint':
      noteHint(run, action);
      break;
    case 'check':
    case 'finish':
      asked = true;
      latchAll(run, after, askedBy(action));
      break;
    default:
      moveOn(run, action, after, act);
  }
  if (isAnswered(run.plan.problem, action, asked)) answer(run, action, act, asked);
}

function moveOn(run: Run, action: Action, after: Desk, act: number): void {
  const { ledger, remark } = noteAction(
    run.notes.get(action.do) ?? NO_NOTES,
    sceneOf(run),
    after,
    action,
    act,
  );
  run.past.push(run.state);
  run.state = { position: after, ledger, lastAct: act };
  if (remark === undefined || remark.step < 0) return;
  const { id, skill } = run.plan.steps[remark.step]!;
  const { verdict, given, due } = remark;
  run.judgements.push({ action: act, step: id, skill: remark.skill ?? skill, verdict, given, due });
}

function noteHint(run: Run, action: Extract<Action, { do: 'hint' }>): void {
  if (action.level === 1) return;
  const findings = findingsOf(run.stage, sceneOf(run), momentOf(run.state.position));
  const step =
    action.step === undefined
      ? findings.findIndex(({ grade }) => grade !== 'right')
      : run.plan.indexOf.get(action.step)!;
  if (step >= 0 && findings[step]!.grade !== 'right') run.hinted.add(step);
}

function latchAll(run: Run, after: Desk, moment: Moment): void {
  let scene = sceneWith(sceneOf(run), after);
  for (let index = 0; index < run.stage.aspects.length; index += 1) {
    const { latch } = run.stage.aspects[index]!;
    if (latch === undefined) continue;
    const ledger = latch(scene, moment);
    if (ledger !== scene.ledger) scene = sceneWith(scene, after, ledger);
  }
  run.state = { position: after, ledger: scene.ledger, lastAct: run.state.lastAct };
}

/** The moment that an action asks about. */
function askedBy(action: Action): Moment {
  if (action.do !== 'finish') return NOW;
  if (action.what === 'product' || action.what === 'problem') return { at: action.what };
  return { at: 'row', row: Number(action.what.slice('row:'.length)) };
}

/** `asked`: the action is a check or a finish. */
function isAnswered({ stage, policy }: Problem, action: Action, asked: boolean): boolean {
  // The open mat answers only when it is asked.
  if (stage === 'open') return action.do === 'check';
  switch (policy.control) {
    case 'eachStep':
      return true;
    case 'checkpoint':
      return asked;
    case 'end':
      return action.do === 'finish' && action.what === 'problem';
    case 'silent':
      return false;
  }
}

/** The mat answers: what is wrong, and at a finish what is missing, is charged to its step for good. */
function answer(run: Run, action: Action, act: number, asked: boolean): void {
  const moment = askedBy(action);
  const scene = sceneOf(run);
  const findings = findingsOf(run.stage, scene, moment);
  for (let step = 0; step < findings.length; step += 1) {
    const found = findings[step]!;
    if (found.grade === 'right' || !charges(scene, step, found, moment)) continue;
    run.charged.add(step);
    run.claims = withBlames(run.claims, found, step);
    if (asked) run.judgements.push(judgementOf(run.plan, act, step, found));
  }
}

function withBlames(
  claims: ReadonlyMap<number, number>,
  { blames = [] }: Finding,
  step: number,
): ReadonlyMap<number, number> {
  if (blames.every((act) => claims.get(act) === step)) return claims;
  return new Map([...claims, ...blames.map((act) => [act, step] as const)]);
}

function judgementOf(plan: Plan, action: number, step: number, found: Finding): Judgement {
  const { id, skill } = plan.steps[step]!;
  const { given, due } = found;
  return { action, step: id, skill: found.skill ?? skill, verdict: 'wrong', given, due };
}

/** What others see of a run. */
export function viewOf(run: Run): Work {
  const { position } = run.state;
  const moment = momentOf(position);
  const scene = sceneOf(run);
  const findings = findingsOf(run.stage, scene, moment);
  const open = [...run.charged].filter((step) => findings[step]!.grade !== 'right');
  return {
    problem: run.plan.problem,
    position: shownOf(run.plan.problem.mat, position),
    log: run.log,
    judgements: run.judgements,
    steps: stepStatuses(run.plan, findings, moment, run),
    lifted: open.sort((a, b) => a - b).map((step) => liftedAt(scene, run.plan.steps[step]!.id)),
    finished: position.finished,
    complete: isComplete(run.plan, findings, moment),
  };
}
