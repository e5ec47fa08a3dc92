/** How long to wait between tries, and when to stop trying. All in ms. */
import type { Later } from '../lti/grades-answers.ts';
import type { Reason } from './reasons.ts';

const SECOND = 1_000;
const MINUTE = 60 * SECOND;
const HOUR = 60 * MINUTE;

const BACK_OFF = [30 * SECOND, 2 * MINUTE, 10 * MINUTE, HOUR, 6 * HOUR] as const;

/** After this a delivery that never came through is parked. */
export const GIVE_UP_AFTER = 72 * HOUR;

/** A platform that fails this often in a row on one mark has probably locked it (Moodle answers a locked one with 500). */
export const MOST_FAILURES = 5;

/** A sender has a row for this long; it asks again before it posts, so that no post outlives its lease. */
export const LEASE = 30 * SECOND;

/** At most this many calls for marks at one platform at the same time, over all server processes. */
export const PLACES = 4;

const PAUSE = 30 * SECOND;

/** Faults of the platform as a whole: the other marks need not run into them one by one. */
const PLATFORM_WIDE: readonly Reason[] = ['busy', 'unreachable', 'nameNotFound', 'tls', 'timeout'];

/** Wait after the n-th try, n from 1. */
export function backOff(tries: number): number {
  return BACK_OFF[Math.min(tries, BACK_OFF.length) - 1] ?? BACK_OFF[0];
}

/** How long nothing at all is sent to a platform that answered so; 0 for faults of the one mark. */
export function pauseAfter({ reason, retryAfter }: Later): number {
  if (retryAfter !== null) return retryAfter;
  return PLATFORM_WIDE.includes(reason) ? PAUSE : 0;
}
