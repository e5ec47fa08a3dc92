import type { Action, WrittenProblem } from '../../engine/child.ts';
import type { Beads } from '../ui/beads.ts';
import { type Reply, request } from './http.ts';

/** What a child did, as it travels: counted by `n` for each open page `client`; `at` = ms since the attempt was opened there. */
export interface Sent {
  readonly client: string;
  readonly n: number;
  readonly at: number;
  readonly problem: number;
  readonly action: Action;
}

/** The same as the server keeps it; `aside` says why it is not judged. */
export interface Entry extends Sent {
  readonly aside?: string;
}

export interface Attempt {
  readonly id: string;
  readonly title: string;
  /** A hash: keys the unsent queue of this person on a shared device. */
  readonly person: string;
  readonly problems: readonly WrittenProblem[];
  /** Problems of which one is still to be picked; then `problems` is empty. */
  readonly choices: readonly WrittenProblem[];
  readonly beads: Beads;
  readonly length: number;
  readonly actions: readonly Entry[];
  readonly trial: boolean;
  readonly graded: boolean;
  readonly release: 'onFinish' | 'byTeacher';
}

interface Accepted {
  readonly length: number;
  readonly acknowledged: Readonly<Record<string, number>>;
  readonly aside: readonly { readonly client: string; readonly n: number }[];
  readonly finished: boolean;
}

/** The answer to a batch that was laid on an outdated list: what this page has not yet seen. */
export interface Tail {
  readonly length: number;
  readonly actions: readonly Entry[];
}

export type DeliveryState = 'none' | 'waiting' | 'sending' | 'sent' | 'held' | 'stuck';

export interface Outcome {
  readonly released: boolean;
  readonly score: {
    readonly awarded: string;
    readonly available: string;
    readonly fraction: string;
  } | null;
  readonly delivery: { readonly state: DeliveryState; readonly reason?: string };
}

export const openAttempt = (): Promise<Reply<{ attempt: Attempt }>> =>
  request('/api/attempt', { method: 'GET' });

/** Picks one of the choices; whatever was picked first stays. */
export const chooseProblem = (id: string, problem: number): Promise<Reply<{ attempt: Attempt }>> =>
  request(`/api/attempts/${encodeURIComponent(id)}/choice`, {
    method: 'POST',
    body: { problem },
  });

export const sendActions = (
  id: string,
  base: number,
  actions: readonly Sent[],
  keepalive = false,
): Promise<Reply<Accepted>> =>
  request(`/api/attempts/${encodeURIComponent(id)}/actions`, {
    method: 'POST',
    body: { base, actions },
    keepalive,
  });

export const readOutcome = (id: string): Promise<Reply<Outcome>> =>
  request(`/api/attempts/${encodeURIComponent(id)}/result`, { method: 'GET' });
