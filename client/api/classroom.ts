import type { DeliveryState } from './attempt.ts';
import { type Reply, request } from './http.ts';

export interface ChildRow {
  readonly label: string;
  readonly state: string;
  readonly problemsFinished: number;
  readonly problems: number;
  readonly score: { readonly awarded: string; readonly available: string; readonly fraction: string } | null;
  readonly delivery: {
    readonly state: DeliveryState;
    readonly reason?: string;
    readonly lastTriedAt?: string | number | null;
  };
}

export interface Classroom {
  readonly activity: { readonly title: string };
  readonly children: readonly ChildRow[];
}

export const readClass = (): Promise<Reply<Classroom>> => request('/api/class', { method: 'GET' });
