import type { ActivityVersion } from '../activities/schema.ts';
import type { ActivityStore } from '../activities/store.ts';
import type { AttemptStore } from '../attempts/store.ts';
import type { VerifiedLaunch } from '../lti/launch.ts';
import { MESSAGES, type MessageCode } from './messages.ts';
import type { Placement, Session } from './schema.ts';
import { SESSION_SECONDS } from './service.ts';
import type { EnrolmentStore, PlacementStore, SessionStore } from './store.ts';
import { digestOf, newToken } from './token.ts';

/** What a launch leads to. With view `message` there is no session: `token` is empty and `message` says why. */
export interface Admitted {
  readonly token: string;
  /** Seconds. */
  readonly expiresIn: number;
  readonly view: 'work' | 'class' | 'message';
  readonly message?: { readonly code: MessageCode; readonly text: string };
}

export interface Stores {
  readonly sessions: SessionStore;
  readonly enrolments: EnrolmentStore;
  readonly placements: PlacementStore;
  readonly activities: ActivityStore;
  readonly attempts: AttemptStore;
}

export type Admit = (launch: VerifiedLaunch) => Promise<{ ok: true; value: Admitted }>;

/**
 * Turns a launch that passed every check into a session. Enrolment, placement and attempt are found or made, so that
 * the same launch admitted twice leads to the same ones.
 */
export function createAdmit(stores: Stores, clock: () => Date): Admit {
  return async (launch) => {
    const outside = outsider(launch);
    if (outside !== null) return message(outside);
    return admitPerson(stores, { ...launch, subject: launch.subject ?? '' }, clock());
  };
}

type Known = VerifiedLaunch & { readonly subject: string };

/** Why nothing is kept of this launch, if so. */
function outsider(launch: VerifiedLaunch): MessageCode | null {
  if (launch.subject === null || launch.role === 'guest') return 'guest';
  return launch.role === 'mentor' ? 'mentor' : null;
}

async function admitPerson(stores: Stores, launch: Known, now: Date) {
  const placement = await placementOf(stores, launch, now);
  const activity = await activityOf(stores, placement);
  if (activity === null)
    return message(placement.activity === null ? 'noActivity' : 'unknownActivity');
  const person = personOf(launch);
  await stores.enrolments.see(person, now);
  const key = { ...identity(person), placement: placement._id, activity: activity.activity };
  const beginning = { context: person.context, version: activity.version, trial: person.trial };
  const attempt = await stores.attempts.begin(key, beginning, now);
  return open(stores, { ...person, placement: placement._id, attempt }, now);
}

/** What a review message tells of a placement is not all of it, so only an ordinary launch brings it up to date. */
async function placementOf({ placements }: Stores, launch: Known, now: Date): Promise<Placement> {
  const { registration, deployment, grades, roster } = launch;
  const key = {
    registration,
    deployment,
    context: contextOf(launch),
    resourceLink: launch.resourceLink.id,
  };
  const known = await placements.find(key);
  if (known !== null && launch.message === 'review') return known;
  return placements.refresh(key, {
    activity: launch.custom.activity ?? known?.activity ?? null,
    lineitem: grades?.lineitem ?? null,
    lineitems: grades?.lineitems ?? null,
    scopes: grades?.scopes ?? [],
    roster: roster?.url ?? null,
    launchedAt: now,
  });
}

/** Teachers can write any id into the platform's settings: one of another platform is as good as none. */
async function activityOf(
  { activities }: Stores,
  placement: Placement,
): Promise<ActivityVersion | null> {
  if (placement.activity === null) return null;
  return activities.newest(placement.activity, placement.registration);
}

function personOf(launch: Known) {
  const { registration, deployment, subject, role } = launch;
  const trial = launch.testUser || role !== 'learner';
  return { registration, deployment, subject, context: contextOf(launch), role, trial };
}

function identity({ registration, deployment, subject }: ReturnType<typeof personOf>) {
  return { registration, deployment, subject };
}

/** A placement outside any course has the empty context. */
const contextOf = (launch: VerifiedLaunch): string => launch.context?.id ?? '';

type Opened = Omit<Session, '_id' | 'expiresAt'>;

async function open({ sessions }: Stores, opened: Opened, now: Date) {
  const token = newToken();
  const expiresAt = new Date(now.getTime() + SESSION_SECONDS * 1000);
  await sessions.keep({ _id: digestOf(token), ...opened, expiresAt });
  const view: Admitted['view'] = opened.role === 'learner' ? 'work' : 'class';
  return { ok: true as const, value: { token, expiresIn: SESSION_SECONDS, view } };
}

function message(code: MessageCode) {
  const value: Admitted = {
    token: '',
    expiresIn: 0,
    view: 'message',
    message: { code, text: MESSAGES[code] },
  };
  return { ok: true as const, value };
}
