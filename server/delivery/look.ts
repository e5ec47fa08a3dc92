/** Is what the gradebook shows still what we put there? */
import type { PlatformResult } from '../lti/grades.ts';
import type { DeliveryRow, Posting } from './row.ts';

/** Platforms round marks to two decimals of their own scale (Moodle to five). */
const ROUNDING = 0.006;

export type Look = 'clear' | 'delivered' | 'changedOnPlatform' | 'removedOnPlatform';

/**
 * `delivered`: the revision that is due is there. `clear`: nothing there but what we sent, or may have sent.
 * @param shown the platform's result, null when the person has none
 */
export function look(row: DeliveryRow, shown: PlatformResult | null): Look {
  if (shown === null) return row.lastSent === null ? 'clear' : 'removedOnPlatform';
  const { desired, inDoubt, lastSent } = row;
  const doubted = inDoubt.some(({ revision }) => revision === desired.revision);
  if (doubted && shows(shown, desired) && notOlder(shown, desired)) return 'delivered';
  const ours = [desired, ...inDoubt, ...(lastSent ? [lastSent] : [])];
  return ours.some((posting) => shows(shown, posting)) ? 'clear' : 'changedOnPlatform';
}

/** The same mark on the platform's scale. */
export function shows(shown: PlatformResult, { scoreGiven, scoreMaximum }: Posting): boolean {
  return Math.abs(shown.score - (scoreGiven / scoreMaximum) * shown.maximum) < ROUNDING;
}

/** The platform keeps whole seconds; one that tells no time proves nothing. */
function notOlder(shown: PlatformResult, { timestamp }: Posting): boolean {
  if (shown.timestamp === null) return false;
  return Math.floor(shown.timestamp / 1000) >= Math.floor(timestamp / 1000);
}
