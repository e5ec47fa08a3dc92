import type { Stage } from '../../engine/child.ts';
import { openAttempt, sendActions } from '../api/attempt.ts';
import { loadStages } from './stages.ts';

/** Calls the task after so many ms, once; the answer calls it off. */
export type Later = (task: () => void, ms: number) => () => void;

/** What the keeping of work needs of the world around it. */
export interface Surroundings {
  /** Null where the browser gives this page none. */
  readonly storage: Storage | null;
  readonly open: typeof openAttempt;
  readonly send: typeof sendActions;
  readonly later: Later;
  /** Fetches what work at these stages needs; false when it could not be had. */
  readonly prepare: (stages: readonly Stage[]) => Promise<boolean>;
  /** Milliseconds since 1970, by this device. */
  readonly now: () => number;
  /** Milliseconds since the page was opened; never goes back. */
  readonly elapsed: () => number;
}

const deviceStorage = (): Storage | null => {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
};

export const later: Later = (task, ms) => {
  const timer = setTimeout(task, ms);
  return () => clearTimeout(timer);
};

export const browserSurroundings = (): Surroundings => ({
  storage: deviceStorage(),
  open: openAttempt,
  send: sendActions,
  later,
  prepare: loadStages,
  now: Date.now,
  elapsed: () => performance.now(),
});
