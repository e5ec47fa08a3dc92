/** The outbox row: what the gradebook is to show for one person in one column, and how far that has come. */
import type { Reason } from './reasons.ts';

/** Two posts for one person and column are at least this far apart, in ms, as are their timestamps: platforms compare whole seconds. */
export const SPACING = 2_000;

export interface DeliveryKey {
  registration: string;
  deployment: string;
  /** URL of the line item, as the launch named it. */
  lineitem: string;
  subject: string;
}

/** A mark that is due in the gradebook: finished and released work. */
export interface ScoreToSend extends DeliveryKey {
  placement: string;
  attempt: string;
  /** Points, two decimals at most; not above `scoreMaximum`. */
  scoreGiven: number;
  scoreMaximum: number;
  /** When the work was finished. */
  timestamp: Date;
  /** One line; never empty, because a score without a comment erases the one before. */
  comment: string;
}

/** One revision as it goes out. `timestamp` in ms. */
export interface Posting {
  revision: number;
  scoreGiven: number;
  scoreMaximum: number;
  timestamp: number;
}

export interface Desired extends Posting {
  comment: string;
  /** The time of the work before anything moved it, in ms. */
  asked: number;
}

/** `waiting` for its turn or for a later try · `sending` under a lease · `sent` · `held` for a person to decide · `stuck` until somebody mends it. */
export const STATES = ['waiting', 'sending', 'sent', 'held', 'stuck'] as const;
export type DeliveryState = (typeof STATES)[number];

/** All times in ms. */
export interface DeliveryRow extends DeliveryKey {
  _id: string;
  placement: string;
  attempt: string;
  desired: Desired;
  /** Where it is posted: the line item, or the one that took its place on the platform. */
  target: string;
  state: DeliveryState;
  /** Names the sender that has the row now. */
  claim: string | null;
  /** Which of the platform's places that sender takes. */
  slot: number | null;
  /** Read the platform's result before the next post: it may hold a teacher's change. */
  lookFirst: boolean;
  /** Somebody decided that ours goes over what was changed there. */
  overrule: boolean;
  renewToken: boolean;
  /** Tries of this revision, the first of them, and how often in a row the platform failed. */
  tries: number;
  firstTry: number | null;
  failures: number;
  /** Posted, and nobody knows whether it arrived. */
  inDoubt: Posting[];
  lastSent: Posting | null;
  /** The latest timestamp ever posted, 0 before the first. */
  highest: number;
  notBefore: number;
  /** When it is due; while `sending`, when the lease ends. */
  nextTry: number;
  lastTry: number | null;
  lastStatus: number | null;
  reason: Reason | null;
}

/**
 * The row after a new mark, or null when it already stands there. The newest mark takes the place of one that waits;
 * timestamps never go back. A learner's own finish is sent without a look at the platform first.
 */
export function coalesce(
  row: DeliveryRow | null,
  score: ScoreToSend,
  now: number,
  id: string,
): DeliveryRow | null {
  const asked = score.timestamp.getTime();
  if (row === null) return begin(score, desiredOf(score, 1, Math.min(asked, now)), now, id);
  if (row.attempt === score.attempt && sameMark(row.desired, score, asked)) return null;
  const timestamp = Math.max(Math.min(asked, now), row.desired.timestamp, row.highest + SPACING);
  const { placement, attempt } = score;
  return {
    ...row,
    ...{ placement, attempt, lookFirst: false, overrule: false },
    ...{ tries: 0, firstTry: null, failures: 0 },
    desired: desiredOf(score, row.desired.revision + 1, timestamp),
    ...(row.state !== 'sending' && {
      state: 'waiting',
      reason: null,
      nextTry: Math.max(now, row.notBefore),
    }),
  };
}

function begin(score: ScoreToSend, desired: Desired, now: number, id: string): DeliveryRow {
  const { registration, deployment, lineitem, subject, placement, attempt } = score;
  return {
    ...{ _id: id, registration, deployment, lineitem, subject, placement, attempt, desired },
    ...{ target: lineitem, state: 'waiting', claim: null, slot: null },
    ...{ lookFirst: false, overrule: false, renewToken: false },
    ...{ tries: 0, firstTry: null, failures: 0 },
    ...{ inDoubt: [], lastSent: null, highest: 0 },
    ...{ notBefore: now, nextTry: now, lastTry: null, lastStatus: null, reason: null },
  };
}

function desiredOf(score: ScoreToSend, revision: number, timestamp: number): Desired {
  const { scoreGiven, scoreMaximum } = score;
  const comment = score.comment.replace(/\s+/g, ' ').trim();
  const asked = score.timestamp.getTime();
  return { revision, scoreGiven, scoreMaximum, timestamp, comment, asked };
}

function sameMark(desired: Desired, score: ScoreToSend, asked: number): boolean {
  const again = desiredOf(score, desired.revision, desired.timestamp);
  return (
    desired.asked === asked &&
    desired.scoreGiven === again.scoreGiven &&
    desired.scoreMaximum === again.scoreMaximum &&
    desired.comment === again.comment
  );
}

/** What may not be enqueued, in words for the programmer who did; null when all is well. */
export function unfit(score: ScoreToSend): string | null {
  const { scoreGiven, scoreMaximum, timestamp, comment } = score;
  if (!(scoreMaximum > 0 && Number.isFinite(scoreMaximum))) return 'scoreMaximum must be above 0';
  if (!(scoreGiven >= 0 && scoreGiven <= scoreMaximum))
    return 'scoreGiven must be from 0 to scoreMaximum';
  if (Number.isNaN(timestamp.getTime())) return 'timestamp must be a time';
  return comment.trim() === '' ? 'comment must not be empty' : null;
}

export function postingOf({ revision, scoreGiven, scoreMaximum, timestamp }: Posting): Posting {
  return { revision, scoreGiven, scoreMaximum, timestamp };
}
