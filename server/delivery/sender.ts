/** One try of one row: look at the platform where that is due, post at most once, say what came of it. */
import type { Grades, Posted, ScoreBody } from '../lti/grades.ts';
import type { Later } from '../lti/grades-answers.ts';
import { look } from './look.ts';
import type { Outbox } from './outbox-store.ts';
import { pauseAfter } from './patience.ts';
import type { Pauses } from './pauses-store.ts';
import type { DeliveryRow } from './row.ts';
import { NOTHING, type Outcome, settleFacts, settleState, wasInDoubt } from './settle.ts';

/** A platform's clock this far from ours is worth a line in the log, in ms: scores carry our time. */
const SKEW = 30_000;

/** Where the platform lists the line items of a placement, to find one that has moved. */
export type PlacementGrades = (
  row: DeliveryRow,
) => Promise<{ lineitems: string; resourceLink: string } | null>;

export interface DeliveryLog {
  info(values: object, text: string): void;
  warn(values: object, text: string): void;
  error(values: object, text: string): void;
}

export interface Parts {
  outbox: Outbox;
  pauses: Pauses;
  grades: Grades;
  placementGrades: PlacementGrades;
  log: DeliveryLog;
  clock: () => number;
}

/** Tries the row and gives it back. `row` as it was before this claim. */
export async function deliver(parts: Parts, row: DeliveryRow, claim: string): Promise<void> {
  const { outbox, log, clock } = parts;
  const outcome = await attempt(parts, row, claim);
  const now = clock();
  const state = settleState(row, outcome, now);
  await outbox.finish(row, claim, settleFacts(row, outcome, now), state, now);
  const { registration, _id: delivery } = row;
  const { reason, status } = outcome;
  log.info({ delivery, registration, outcome: outcome.kind, reason, status }, 'mark tried');
}

async function attempt(parts: Parts, row: DeliveryRow, claim: string): Promise<Outcome> {
  if (row.lookFirst) {
    const seen = await lookAtPlatform(parts, row);
    if (seen !== null) return seen;
  }
  if (!(await parts.outbox.keep(row, claim, parts.clock())))
    return { ...NOTHING, kind: 'overtaken' };
  const { registration, target, renewToken } = row;
  const posted = await parts.grades.postScore(registration, target, bodyOf(row), renewToken);
  noteSkew(parts, row, posted);
  return afterPost(parts, row, posted);
}

function bodyOf({ subject, desired }: DeliveryRow): ScoreBody {
  return {
    userId: subject,
    scoreGiven: desired.scoreGiven,
    scoreMaximum: desired.scoreMaximum,
    comment: desired.comment,
    timestamp: new Date(desired.timestamp).toISOString(),
    activityProgress: 'Completed',
    gradingProgress: 'FullyGraded',
  };
}

/** Null when nothing speaks against posting. A platform that does not let us look is posted to all the same. */
async function lookAtPlatform(parts: Parts, row: DeliveryRow): Promise<Outcome | null> {
  const reading = await parts.grades.readResult(row.registration, row.target, row.subject);
  if (reading.kind === 'later') return again(parts, row, reading, { posted: false });
  if (reading.kind === 'unreadable') return null;
  const seen = look(row, reading.value);
  if (seen === 'clear') return null;
  if (seen === 'delivered') return { ...NOTHING, kind: 'sent' };
  if (row.overrule) return null;
  return { ...NOTHING, kind: 'hold', reason: seen };
}

async function afterPost(parts: Parts, row: DeliveryRow, { answer }: Posted): Promise<Outcome> {
  const posted = { ...NOTHING, posted: true, status: answer.status };
  switch (answer.kind) {
    case 'accepted':
      return { ...posted, kind: 'sent' };
    case 'older':
      return wasInDoubt(row) ? { ...posted, kind: 'sent' } : afterConflict(parts, row, posted);
    case 'unauthorised':
      if (!row.renewToken)
        return { ...posted, kind: 'again', reason: 'unauthorised', renewToken: true };
      return { ...posted, kind: 'stop', reason: answer.granted ? 'unauthorised' : 'scopeMissing' };
    case 'refused':
      return { ...posted, kind: 'stop', reason: answer.reason };
    case 'gone':
      return afterGone(parts, row, posted);
    case 'later':
      return again(parts, row, answer, { posted: true });
  }
}

async function again(
  { pauses, clock }: Parts,
  row: DeliveryRow,
  later: Later,
  { posted }: { posted: boolean },
): Promise<Outcome> {
  const pause = pauseAfter(later);
  if (pause > 0) await pauses.begin(row.registration, clock() + pause);
  const { reason, status, retryAfter } = later;
  const doubtful = posted && later.doubtful;
  return { ...NOTHING, kind: 'again', posted, doubtful, reason, status, retryAfter };
}

/** A revision that was certainly never taken is refused as too old: is it there, or what else is there? */
async function afterConflict(
  parts: Parts,
  row: DeliveryRow,
  posted: Omit<Outcome, 'kind'>,
): Promise<Outcome> {
  const reading = await parts.grades.readResult(row.registration, row.target, row.subject);
  const shown = reading.kind === 'read' ? reading.value : null;
  const restamp = { ...posted, reason: 'platformHasNewer', after: shown?.timestamp ?? 0 } as const;
  if (shown === null) return { ...restamp, kind: 'restamp' };
  const seen = look({ ...row, inDoubt: [...row.inDoubt, row.desired] }, shown);
  if (seen === 'delivered') return { ...posted, kind: 'sent' };
  if (seen === 'clear' || row.overrule) return { ...restamp, kind: 'restamp' };
  return { ...posted, kind: 'hold', reason: seen };
}

/** The line item is not there: it may have been copied or made anew for the same link. */
async function afterGone(
  { grades, placementGrades }: Parts,
  row: DeliveryRow,
  posted: Omit<Outcome, 'kind'>,
): Promise<Outcome> {
  const gone: Outcome = { ...posted, kind: 'stop', reason: 'lineItemGone' };
  const item = await grades.readLineItem(row.registration, row.target);
  if (item.kind === 'read') return { ...posted, kind: 'again', reason: 'strangeAnswer' };
  const placement = await placementGrades(row);
  if (placement === null) return gone;
  const { lineitems, resourceLink } = placement;
  const found = await grades.findLineItems(row.registration, lineitems, resourceLink);
  if (found.kind === 'later') return { ...posted, kind: 'again', reason: found.reason };
  const [only, ...others] = found.kind === 'read' ? found.value : [];
  if (only === undefined || others.length > 0 || only.id === row.target) return gone;
  return { ...posted, kind: 'retarget', target: only.id };
}

function noteSkew({ log, clock }: Parts, row: DeliveryRow, { platformClock }: Posted): void {
  if (platformClock === null) return;
  const skew = platformClock - clock();
  const { registration } = row;
  if (Math.abs(skew) > SKEW)
    log.warn({ registration, skew }, "the platform's clock differs from ours");
}
