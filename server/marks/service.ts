import type { Work } from '../../engine/index.ts';
import type { ActivityStore } from '../activities/store.ts';
import { type Ungraded, ungraded } from '../attempts/finish.ts';
import type { Attempt } from '../attempts/schema.ts';
import type { Standings } from '../attempts/standings.ts';
import type { AttemptStore } from '../attempts/store.ts';
import type { Delivery, ShownDelivery } from '../delivery/delivery.ts';
import { done, type Outcome, refuse } from '../errors.ts';
import type { Placement, Session } from '../sessions/schema.ts';
import type { PlacementStore } from '../sessions/store.ts';

interface MarkParts {
  readonly attempts: AttemptStore;
  readonly activities: ActivityStore;
  readonly placements: PlacementStore;
  readonly standings: Pick<Standings, 'of'>;
  readonly delivery: Pick<Delivery, 'deliveryState'>;
}

export type MarkService = ReturnType<typeof createMarks>;

export function createMarks({ attempts, activities, placements, standings, delivery }: MarkParts) {
  /** What a learner may know of the mark: nothing before it is released. */
  async function result(session: Session, id: string): Promise<Outcome<unknown>> {
    if (id !== session.attempt) return refuse('notFound');
    const attempt = await attempts.find({ ...session, id });
    const activity = attempt && (await activities.find(attempt.activity, attempt.version));
    const placement = await placements.ofSession(session);
    if (!attempt || !activity || !placement) return refuse('notFound');
    const released = attempt.releasedAt !== null;
    const works = released ? (await standings.of(attempt, activity)).works : [];
    return done({
      released,
      score: released ? attempt.score : null,
      problems: works.map(problemResult),
      delivery: await deliveryOf(attempt, placement),
    });
  }

  async function deliveryOf(attempt: Attempt, placement: Placement) {
    const unsent = whyUnsent(attempt, placement);
    if (unsent !== null) return { state: 'none', reason: unsent };
    const { registration, deployment, subject } = attempt;
    const key = { registration, deployment, subject, lineitem: placement.lineitem ?? '' };
    return shownDelivery(await delivery.deliveryState(key));
  }

  return { result };
}

export type Unsent = Ungraded | 'notFinished' | 'notReleased';

/** Why no mark of this attempt is on its way, or `null` if one is. */
export function whyUnsent(
  attempt: Pick<Attempt, 'trial' | 'finishedAt' | 'releasedAt'>,
  placement: Placement,
): Unsent | null {
  const never = ungraded(attempt.trial, placement);
  if (never !== null) return never;
  if (attempt.finishedAt === null) return 'notFinished';
  return attempt.releasedAt === null ? 'notReleased' : null;
}

/** As the pages are told: a reason only where there is one. */
export function shownDelivery({ state, reason, lastTriedAt }: ShownDelivery) {
  return { state, ...(reason !== null && { reason }), lastTriedAt };
}

function problemResult({ steps, complete }: Work) {
  return { steps: steps.map(({ id, skill, status }) => ({ id, skill, status })), complete };
}
