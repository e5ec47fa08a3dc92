import type { Action, Line } from '../mat/action.ts';
import type { Square } from '../mat/geometry.ts';
import type { Position } from '../mat/position.ts';
import type { Problem } from '../problem.ts';
import type { Edge, Move, RefusalCode, Skill, Status, Verdict } from '../vocabulary.ts';

/** Step ids: `tile:bottom:0`, `laid:0:2`, `counted:0:2`, `said:1`, `slid:1`, `settled:3`, `read:-2`, … (places absolute). */
export interface Step {
  readonly id: string;
  readonly skill: Skill;
}

export interface StepStatus extends Step {
  readonly status: Status;
  /** Why the step has this status: a key of words with its values. */
  readonly reason: Say;
}

/** `given` and `due` are small numbers or decimal texts; null: nothing, or not known yet. */
export interface Judgement {
  /** Index into the log. */
  readonly action: number;
  readonly step: string;
  readonly skill: Skill;
  readonly verdict: Verdict;
  readonly given: number | string | null;
  readonly due: number | string | null;
}

/** What the mat has answered "look again" and is not yet mended. */
export interface Lifted {
  readonly step: string;
  readonly square?: Square;
  readonly tile?: { readonly edge: Edge; readonly index: number };
  readonly line?: { readonly line: Line; readonly place: number };
  readonly row?: number;
  readonly prompt?: number;
}

export interface LogEntry {
  readonly action: Action;
  readonly refused?: RefusalCode;
}

/** Words to show: `key` is looked up by the page, `values` are put in (numbers formatted by locale). */
export interface Say {
  readonly key: string;
  readonly values: Readonly<Record<string, SayValue>>;
}
export type SayValue = number | string | boolean | null | readonly number[];

/** A move of the presentation and its caption. */
export interface Suggestion {
  readonly action: Action;
  readonly say: Say & { readonly key: Move };
}

/** One child's work on one problem: always the fold of its actions. Treat as read-only. */
export interface Work {
  readonly problem: Problem;
  readonly position: Position;
  readonly log: readonly LogEntry[];
  readonly judgements: readonly Judgement[];
  readonly steps: readonly StepStatus[];
  readonly lifted: readonly Lifted[];
  readonly finished: Position['finished'];
  /** Finished, no step's work missing, and nothing rests on a tile that was changed since. */
  readonly complete: boolean;
}
