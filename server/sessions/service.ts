import type { Session } from './schema.ts';
import type { EnrolmentStore, SessionStore } from './store.ts';
import { bearerIn, digestOf } from './token.ts';

/** A session ends this long after its last sign of life. */
export const SESSION_SECONDS = 3600;
const SLIDE_BELOW_SECONDS = SESSION_SECONDS / 2;

export interface SessionService {
  /** The live session of an `Authorization` header, or `null`. Use keeps it alive. */
  find(header: string | undefined): Promise<Session | null>;
  /** Lets a session slide to its full length; `null` when it may not. */
  renew(session: Session): Promise<{ expiresIn: number } | null>;
}

export function createSessions(
  sessions: SessionStore,
  enrolments: EnrolmentStore,
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

  const find = async (header: string | undefined) => {
    const token = bearerIn(header);
    if (token === null) return null;
    const session = await sessions.find(digestOf(token), clock());
    if (session === null) return null;
    const left = (session.expiresAt.getTime() - clock().getTime()) / 1000;
    if (left < SLIDE_BELOW_SECONDS) return (await renew(session)) && session;
    return session;
  };

  return { find, renew };
}
