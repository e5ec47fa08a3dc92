import { request } from './http.ts';
import { setToken } from './session-token.ts';

interface Renewed {
  readonly token: string;
  /** Seconds. */
  readonly expiresIn: number;
}

/** A session lives for an hour; both in ms. */
const EVERY = 10 * 60_000;
const LATEST = 60_000;

/** Lets the session slide while the page is open, so that nothing expires under a child at work; at once after a sleep or a cut, when timers stood still. */
export const renewWhileOpen = (renewed: (session: Renewed) => void): void => {
  let tried = Date.now();
  const renew = async () => {
    tried = Date.now();
    const reply = await request<Renewed>('/api/sessions/renew', { method: 'POST', body: {} });
    if (!reply.ok) return;
    setToken(reply.value.token);
    renewed(reply.value);
  };
  const renewIfDue = () => {
    if (document.visibilityState === 'visible' && Date.now() - tried > LATEST) void renew();
  };
  setInterval(renew, EVERY);
  addEventListener('online', renewIfDue);
  document.addEventListener('visibilitychange', renewIfDue);
};
