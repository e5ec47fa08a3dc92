import { fractionText, score, toPoints, type Work } from '../../engine/index.ts';
import type { ActivityVersion } from '../activities/schema.ts';
import type { ScoreToSend } from '../delivery/row.ts';
import { gradebookComment } from '../marks/words.ts';
import type { Person, Placement } from '../sessions/schema.ts';
import type { Attempt, ScoreText } from './schema.ts';

/** The scope that lets a tool send scores (Assignment and Grade Services 2.0 §3.1.1). */
const SCORE_SCOPE = 'https://purl.imsglobal.org/spec/lti-ags/scope/score';

/** Why work here leads to no entry in a gradebook, or `null` if it does. */
export type Ungraded = 'trial' | 'noLineItem' | 'noScope';

export function ungraded(trial: boolean, placement: Placement): Ungraded | null {
  if (trial) return 'trial';
  if (!hasLineItem(placement)) return 'noLineItem';
  return placement.scopes.includes(SCORE_SCOPE) ? null : 'noScope';
}

export function hasLineItem<P extends Placement>(
  placement: P,
): placement is P & { readonly lineitem: string } {
  return placement.lineitem !== null;
}

export function scoreOf(works: readonly Work[]): ScoreText {
  const { awarded, available, fraction } = score(works);
  return {
    awarded: fractionText(awarded),
    available: fractionText(available),
    fraction: fractionText(fraction),
  };
}

/** `null` when nothing in the work can be scored. */
export function scoreRow(
  works: readonly Work[],
  { registration, deployment, subject, _id: attempt }: Pick<Attempt, keyof Person | '_id'>,
  placement: Placement & { readonly lineitem: string },
  { points }: ActivityVersion,
  timestamp: Date,
): ScoreToSend | null {
  const { available, fraction } = score(works);
  if (available.num === 0n) return null;
  const given = toPoints(fraction, points);
  // Points are checked when an activity is made; others are a fault of ours.
  if (!given.ok) throw new Error(`stored points are no maximum: ${given.fault.code}`);
  return {
    ...{ registration, deployment, subject, attempt, timestamp },
    lineitem: placement.lineitem,
    placement: placement._id,
    // Points with two decimals, rounded by the engine: the one place where a score becomes a number, for the wire.
    scoreGiven: Number(given.value),
    scoreMaximum: Number(points),
    comment: gradebookComment(works),
  };
}
