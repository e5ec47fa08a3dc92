/** What a try has taught us, and what the row becomes by it. Pure. */
import { backOff, GIVE_UP_AFTER, MOST_FAILURES } from './patience.ts';
import type { Reason } from './reasons.ts';
import { type DeliveryRow, type Posting, postingOf, SPACING } from './row.ts';

export interface Outcome {
  /**
   * `sent` the gradebook has it · `again` try later · `stop` until somebody mends it · `hold` for a decision ·
   * `restamp` the gradebook holds a later time: take one after `after` · `retarget` the column has moved ·
   * `overtaken` a newer mark came in before anything was posted
   */
  kind: 'sent' | 'again' | 'stop' | 'hold' | 'restamp' | 'retarget' | 'overtaken';
  /** Whether the try posted anything, and whether that may have arrived without a good answer. */
  posted: boolean;
  doubtful: boolean;
  reason: Reason | null;
  status: number | null;
  /** ms the platform asked us to wait. */
  retryAfter: number | null;
  renewToken: boolean;
  after: number;
  target: string | null;
}

export const NOTHING: Omit<Outcome, 'kind'> = {
  posted: false,
  doubtful: false,
  reason: null,
  status: null,
  retryAfter: null,
  renewToken: false,
  after: 0,
  target: null,
};

export type Changes = Partial<DeliveryRow>;

/** Nothing of the tries so far counts for what comes next. */
const FRESH: Changes = {
  overrule: false,
  renewToken: false,
  tries: 0,
  firstTry: null,
  failures: 0,
};

/** Changes that hold whatever came in meanwhile. `row` as it was before the claim. */
export function settleFacts(row: DeliveryRow, outcome: Outcome, now: number): Changes {
  const posting = postingOf(row.desired);
  const known = row.inDoubt.some(({ revision }) => revision === posting.revision);
  const inDoubt = known || !outcome.doubtful ? row.inDoubt : [...row.inDoubt, posting].slice(-10);
  return {
    claim: null,
    slot: null,
    lastTry: now,
    lastStatus: outcome.status,
    ...(outcome.posted && { notBefore: now + SPACING }),
    ...(outcome.kind === 'sent' ? { inDoubt: [], lastSent: posting } : { inDoubt }),
    ...(outcome.target !== null && { target: outcome.target, inDoubt: [], lastSent: null }),
  };
}

/** Changes that hold only if the revision that was tried is still the newest. */
export function settleState(row: DeliveryRow, outcome: Outcome, now: number): Changes {
  const tries = row.tries + 1;
  const { reason } = outcome;
  switch (outcome.kind) {
    case 'sent':
      return { state: 'sent', reason: null, ...FRESH };
    case 'stop':
      return { state: 'stuck', reason, renewToken: false };
    case 'hold':
      return { state: 'held', reason, renewToken: false };
    case 'overtaken':
    case 'retarget':
      return { state: 'waiting', reason, nextTry: now + SPACING };
    case 'restamp':
    case 'again':
      return tryLater({ ...row, tries }, outcome, now);
  }
}

function tryLater(row: DeliveryRow, outcome: Outcome, now: number): Changes {
  const failures = outcome.reason === 'failing' ? row.failures + 1 : 0;
  const { reason, renewToken } = outcome;
  const facts = { reason, failures, renewToken, ...restamped(row, outcome, now) };
  if (failures >= MOST_FAILURES || now - (row.firstTry ?? now) >= GIVE_UP_AFTER)
    return { ...facts, state: 'stuck' };
  const soon = renewToken || (outcome.kind === 'restamp' && row.tries === 1);
  const wait = soon ? SPACING : backOff(row.tries);
  return { ...facts, state: 'waiting', nextTry: now + Math.max(wait, outcome.retryAfter ?? 0) };
}

/** The same revision under a later time: only after a certain refusal of the time it had. */
function restamped(row: DeliveryRow, outcome: Outcome, now: number): Changes {
  if (outcome.kind !== 'restamp') return {};
  const timestamp = Math.max(
    now,
    SPACING + Math.max(outcome.after, row.highest, row.desired.timestamp),
  );
  return { desired: { ...row.desired, timestamp } };
}

/** True when an earlier try of this very revision may have arrived. */
export function wasInDoubt(row: DeliveryRow): boolean {
  return row.inDoubt.some(({ revision }: Posting) => revision === row.desired.revision);
}
