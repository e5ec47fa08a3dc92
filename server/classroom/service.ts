import { BEADS } from '../activities/schema.ts';
import type { ActivityStore } from '../activities/store.ts';
import { problemsOf } from '../attempts/chosen.ts';
import { handIn } from '../attempts/hand-in.ts';
import type { Attempt } from '../attempts/schema.ts';
import type { AttemptStore } from '../attempts/store.ts';
import { standingOf } from '../attempts/work.ts';
import type { Transaction } from '../database/transaction.ts';
import type { Delivery, ShownDelivery } from '../delivery/delivery.ts';
import { done, type Outcome, refuse } from '../errors.ts';
import { shownDelivery, whyUnsent } from '../marks/service.ts';
import type { Placement, Session } from '../sessions/schema.ts';
import type { PlacementStore } from '../sessions/store.ts';

interface ClassParts {
  readonly attempts: AttemptStore;
  readonly activities: ActivityStore;
  readonly placements: PlacementStore;
  readonly delivery: Pick<Delivery, 'deliveryStates' | 'enqueueScore'>;
  readonly inTransaction: <T>(task: (transaction: Transaction) => Promise<T>) => Promise<T>;
  readonly clock: () => Date;
}

type Summary = Omit<Attempt, 'actions'>;
export type ClassService = ReturnType<typeof createClassroom>;

export function createClassroom(parts: ClassParts) {
  const { attempts, activities, placements, delivery, clock } = parts;

  /** The teacher's table for one placement. No names: children are numbered in the order in which they began. */
  async function table(session: Session): Promise<Outcome<unknown>> {
    const placement = await placements.ofSession(session);
    const activity =
      placement?.activity && (await activities.newest(placement.activity, session.registration));
    if (!placement || !activity) return refuse('notFound');
    const [rows, states] = await Promise.all([attempts.atPlacement(session), statesAt(placement)]);
    const sizes = await problemCounts(rows);
    const children = rows.map((row, index) => child(row, index, placement, sizes, states));
    const { title, release, problems, beads = BEADS[0] } = activity;
    return done({ activity: { title, release, problems, beads }, children });
  }

  async function statesAt(placement: Placement): Promise<Map<string, ShownDelivery>> {
    const { registration, deployment, lineitem } = placement;
    return lineitem === null
      ? new Map()
      : delivery.deliveryStates({ registration, deployment, lineitem });
  }

  /** How many problems each version in the table has. */
  async function problemCounts(rows: readonly Summary[]): Promise<Map<string, number>> {
    const versions = new Map(rows.map((row) => [versionOf(row), row]));
    const counts = [...versions].map(async ([key, row]): Promise<[string, number]> => {
      const version = await activities.find(row.activity, row.version);
      return [key, version?.choice === true ? 1 : (version?.problems.length ?? 0)];
    });
    return new Map(await Promise.all(counts));
  }

  /** Shows every learner at this placement the score of what is finished, and hands it in. Counts them. */
  async function release(session: Session): Promise<Outcome<{ released: number }>> {
    const placement = await placements.ofSession(session);
    if (placement === null) return refuse('notFound');
    const rows = await attempts.atPlacement(session);
    const due = rows.filter((row) => row.finishedAt !== null && row.releasedAt === null);
    let released = 0;
    for (const row of due) if (await releaseOne(row, placement)) released += 1;
    return done({ released });
  }

  async function releaseOne(row: Summary, placement: Placement): Promise<boolean> {
    const owner = { ...row, id: row._id };
    const attempt = await attempts.find(owner);
    const activity = attempt && (await activities.find(attempt.activity, attempt.version));
    if (!attempt || !activity) return false;
    const standing = await standingOf(problemsOf(activity, attempt), attempt.actions);
    return parts.inTransaction(async (transaction) => {
      const first = await attempts.release(owner, clock(), transaction);
      if (first)
        await handIn({ attempt, activity, standing }, placement, false, delivery, transaction);
      return first;
    });
  }

  return { table, release };
}

const versionOf = ({ activity, version }: Pick<Attempt, 'activity' | 'version'>): string =>
  `${activity} ${version}`;

function child(
  row: Summary,
  index: number,
  placement: Placement,
  sizes: ReadonlyMap<string, number>,
  states: ReadonlyMap<string, ShownDelivery>,
) {
  const unsent = whyUnsent(row, placement);
  const state = states.get(row.subject) ?? { state: 'none', reason: null, lastTriedAt: null };
  return {
    label: `Child ${index + 1}`,
    state: stateOf(row),
    problemsFinished: row.problemsFinished,
    problems: sizes.get(versionOf(row)) ?? 0,
    score: row.score,
    delivery:
      unsent === null ? shownDelivery(state) : { state: 'none', reason: unsent, lastTriedAt: null },
  };
}

function stateOf({ finishedAt, releasedAt, length }: Summary) {
  if (releasedAt !== null) return 'released';
  if (finishedAt !== null) return 'finished';
  return length === 0 ? 'notStarted' : 'working';
}
