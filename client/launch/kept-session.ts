/** This tab's session: it survives a reload of the page and nothing else, and is sent only in a header. */
import { attempt } from './browser-storage.ts';

export type View = 'work' | 'class' | 'message';

export interface Session {
  token: string;
  /** Seconds from `since`. */
  expiresIn: number;
  /** Milliseconds since 1970 by this browser's clock. */
  since: number;
  view: View;
}

const KEY = 'session';

/** Call again with every renewed token. */
export function keepSession(session: Session): void {
  attempt(() => sessionStorage.setItem(KEY, JSON.stringify(session)));
}

export function keptSession(now: number): Session | null {
  const text = attempt(() => sessionStorage.getItem(KEY));
  const session = text ? (JSON.parse(text) as Session) : null;
  return session !== null && now < session.since + session.expiresIn * 1000 ? session : null;
}

export function dropSession(): void {
  attempt(() => sessionStorage.removeItem(KEY));
}
