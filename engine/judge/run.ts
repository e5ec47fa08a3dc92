import type { Action } from '../mat/action.ts';
import { apply } from '../mat/apply.ts';
import { emptyPosition, type Position } from '../mat/position.ts';
import type { Problem } from '../problem.ts';
import type { RefusalCode } from '../vocabulary.ts';
import { charges, findingsOf, momentOf } from './findings.ts';
import { emptyLedger } from './ledger.ts';
import type { Memo } from './memo.ts';
import { makePlan } from './plan.ts';
import type { Finding, Ledger, Moment, Plan, Scene } from './scene.ts';
import { noteAction, type StageRules } from './stage.ts';
import { isComplete, liftedAt, stepStatuses } from './status.ts';
import type { Judgement, LogEntry, Work } from './work.ts';

interface State {
  readonly position: Position;
  readonly ledger: Ledger;
  readonly lastAct: number;
}

/** One work being done: the state, the states to go back to, and what no undo takes back. */
export interface Run {
  readonly stage: StageRules;
  readonly plan: Plan;
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
  const plan = planOf(problem, stage);
  const position = emptyPosition(problem.mat.rows, problem.mat.columns);
  return {
    stage,
    plan,
    state: { position, ledger: emptyLedger(plan), lastAct: -1 },
    past: [],
    log: [],
    judgements: [],
    charged: new Set(),
    hinted: new Set(),
    claims: new Map(),
    memo: new Map(),
  };
}

const PLANS = new WeakMap<Problem, Plan>();

/** A class works the same problem: its steps are listed once. */
function planOf(problem: Problem, stage: StageRules): Plan {
  const known = PLANS.get(problem);
  if (known !== undefined) return known;
  const plan = makePlan(problem, stage.aspects);
  PLANS.set(problem, plan);
  return plan;
}

/** A run that may go on without changing this one. */
export function copyRun(run: Run): Run {
  return {
    ...run,
    past: run.past.slice(),
    log: run.log.slice(),
    judgements: run.judgements.slice(),
    charged: new Set(run.charged),
    hinted: new Set(run.hinted),
  };
}

export function sceneOf(run: Run): Scene {
  const { plan, state, claims, charged, memo } = run;
  const { position, ledger, lastAct } = state;
  return { plan, position, ledger, claims, charged, lastAct, memo };
}

/** Done as said, or the reason why real material could not. */
export function physicsOf(run: Run, action: Action): Position | RefusalCode {
  const { position } = run.state;
  if (action.do === 'undo') {
    if (position.finished.problem) return 'finished';
    return run.past.at(-1)?.position ?? 'nothingToUndo';
  }
  const unknown =
    action.do === 'hint' && action.step !== undefined && !run.plan.indexOf.has(action.step);
  return unknown ? 'noSuchStep' : apply(run.plan.problem, position, action);
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
  if (action.do === 'undo') run.state = run.past.pop()!;
  else if (action.do === 'hint') noteHint(run, action);
  else if (action.do === 'check' || action.do === 'finish') latchAll(run, after, askedBy(action));
  else moveOn(run, action, after, act);
  answer(run, action, act);
}

function moveOn(run: Run, action: Action, after: Position, act: number): void {
  const { ledger, remark } = noteAction(run.stage, sceneOf(run), after, action, act);
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

function latchAll(run: Run, after: Position, moment: Moment): void {
  run.state = { ...run.state, position: after };
  for (const { latch } of run.stage.aspects) {
    if (latch !== undefined) run.state = { ...run.state, ledger: latch(sceneOf(run), moment) };
  }
}

/** The moment that an action asks about. */
function askedBy(action: Action): Moment {
  if (action.do !== 'finish') return { at: 'now' };
  if (action.what === 'product' || action.what === 'problem') return { at: action.what };
  return { at: 'row', row: Number(action.what.slice('row:'.length)) };
}

function isAnswered({ plan }: Run, action: Action): boolean {
  const asks = action.do === 'check' || action.do === 'finish';
  // The open mat answers only when it is asked.
  if (plan.problem.stage === 'open') return action.do === 'check';
  switch (plan.problem.policy.control) {
    case 'eachStep':
      return true;
    case 'checkpoint':
      return asks;
    case 'end':
      return action.do === 'finish' && action.what === 'problem';
    case 'silent':
      return false;
  }
}

/** The mat answers: what is wrong, and at a finish what is missing, is charged to its step for good. */
function answer(run: Run, action: Action, act: number): void {
  if (!isAnswered(run, action)) return;
  const moment = askedBy(action);
  const scene = sceneOf(run);
  const asks = action.do === 'check' || action.do === 'finish';
  for (const [step, found] of findingsOf(run.stage, scene, moment).entries()) {
    if (!charges(scene, step, found, moment)) continue;
    run.charged.add(step);
    run.claims = withBlames(run.claims, found, step);
    if (asks) run.judgements.push(judgementOf(run.plan, act, step, found));
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
  const lifted = [...run.charged]
    .sort((a, b) => a - b)
    .filter((step) => findings[step]!.grade !== 'right');
  return {
    problem: run.plan.problem,
    position,
    log: run.log,
    judgements: run.judgements,
    steps: stepStatuses(run.plan, findings, moment, run),
    lifted: lifted.map((step) => liftedAt(scene, run.plan.steps[step]!.id)),
    finished: position.finished,
    complete: isComplete(run.plan, findings, moment),
  };
}
