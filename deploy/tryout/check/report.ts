import type { Browser } from 'playwright-core';
import type { ChildProcess } from '../child-process.ts';
import type { Plan } from '../plan.ts';

/** What a check prints. `ok` only if everything held; else `reason` says what did not. */
export interface Report {
  ok: boolean;
  reason?: string;
  launch?: { as: string; activity: string; frame: string };
  /** The Sec-Fetch-Site header of the launch, as the browser sent it. */
  fetchSite?: string;
  /** How many actions the child did, and how many of them the tool holds at the end. */
  actions?: { done: number; kept: number };
  restarts: number;
  /** How the tool's first process ended. */
  signal?: number | NodeJS.Signals;
  pids: { tool: number[]; school: number[] };
  startTimes: { tool: string[]; school: string[] };
  /** By the results service of the platform. */
  score?: number;
  expected: number;
  /** The platform's log of accepted scores. */
  platformScores?: object[];
  delivered?: boolean;
  seconds?: number;
}

/** What runs during a check. */
export interface Running {
  plan: Plan;
  tool: ChildProcess;
  school: ChildProcess;
  browser: Browser;
}

export const emptyReport = (expected: number): Report => ({
  ok: false,
  restarts: 0,
  pids: { tool: [], school: [] },
  startTimes: { tool: [], school: [] },
  expected,
});

export const must: (held: unknown, reason: string) => asserts held = (held, reason) => {
  if (!held) throw new Error(reason);
};

export const note = (
  report: Report,
  who: 'tool' | 'school',
  { pid, startedAt }: ChildProcess,
): void => {
  report.pids[who].push(pid);
  report.startTimes[who].push(new Date(startedAt).toISOString());
};
