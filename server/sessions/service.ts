import type { Session } from './schema.ts';
import type { EnrolmentStore, SessionStore } from './store.ts';
import { bearerIn, digestOf } from './token.ts';

/** A session ends this long after its last sign of life. */
export const SESSION_SECONDS = 3600;
const SLIDE_BELOW_SECONDS = SESSION_SECONDS / 2;

/** How long a session that was read is believed without reading it again: less than any step of its life. */
const BELIEVED_SECONDS = 20;
const MOST_HELD = 5_000;

export interface SessionService {
  /** The live session of an `Authorization` header, or `null`. Use keeps it alive. */
  find(header: string | undefined): Promise<Session | null>;
  /** Lets a session slide to its full length; `null` when it may not. */
  renew(session: Session): Promise<{ expiresIn: number } | null>;
}

export function createSessions(
  sessions: SessionStore,
  enrolments: EnrolmentStore,
  isSuspended: (registration: string) => Promise<boolean>,
  clock: () => Date,
): SessionService {
  const renew = async (session: Session) => {
    if (!(await roleStands(session))) return null;
    const now = clock();
    const expiresAt = new Date(now.getTime() + SESSION_SECONDS * 1000);
    const slid = await sessions.slide(session._id, now, expiresAt);
    return slid ? { expiresIn: SESSION_SECONDS } : null;
  };

  /** Who was a teacher yesterday may be none today: a role is believed as long as the last launch confirms it. */
  const roleStands = async (session: Session) => {
    const enrolment = await enrolments.find(session);
    return enrolment?.role === session.role;
  };

  const held = new Map<string, { readonly session: Session; readonly readAt: number }>();

  /** Most requests come in a row from one page; a session changes only by getting older and by sliding. */
  const read = async (digest: string): Promise<Session | null> => {
    const now = clock();
    const known = held.get(digest);
    const fresh = known !== undefined && now.getTime() - known.readAt < BELIEVED_SECONDS * 1000;
    if (fresh && known.session.expiresAt > now) return known.session;
    held.delete(digest);
    const session = await sessions.find(digest, now);
    if (session !== null && (await isSuspended(session.registration))) return null;
    if (session !== null) hold(digest, session, now.getTime());
    return session;
  };

  const hold = (digest: string, session: Session, readAt: number) => {
    if (held.size >= MOST_HELD) held.clear();
    held.set(digest, { session, readAt });
  };

  const find = async (header: string | undefined) => {
    const token = bearerIn(header);
    const session = token === null ? null : await read(digestOf(token));
    if (session === null) return null;
    if (secondsLeft(session, clock()) > SLIDE_BELOW_SECONDS) return session;
    held.delete(session._id);
    return (await renew(session)) && session;
  };

  return { find, renew };
}

const secondsLeft = ({ expiresAt }: Session, now: Date): number =>
  (expiresAt.getTime() - now.getTime()) / 1000;
