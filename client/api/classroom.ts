import type { WrittenProblem } from '../../engine/child.ts';
import type { Beads } from '../ui/beads.ts';
import type { DeliveryState } from './attempt.ts';
import { type Reply, request } from './http.ts';

export type ChildState = 'notStarted' | 'working' | 'finished' | 'released';

export interface ChildRow {
  readonly state: ChildState;
  readonly problemsFinished: number;
  readonly problems: number;
  readonly score: { readonly awarded: string; readonly available: string } | null;
  readonly delivery: {
    readonly state: DeliveryState;
    readonly reason?: string;
    readonly lastTriedAt: string | number | null;
  };
}

export interface Classroom {
  readonly activity: {
    readonly title: string;
    readonly release: 'onFinish' | 'byTeacher';
    readonly problems: readonly WrittenProblem[];
    readonly beads: Beads;
  };
  readonly children: readonly ChildRow[];
}

export const readClass = (): Promise<Reply<Classroom>> => request('/api/class', { method: 'GET' });

/** Shows every child the result of finished work and hands in its mark. */
export const releaseAll = (): Promise<Reply<{ released: number }>> =>
  request('/api/class/release', { method: 'POST', body: {} });
