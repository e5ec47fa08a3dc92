import { request } from './http.ts';
import { setToken } from './session-token.ts';

interface Renewed {
  readonly token: string;
  /** Seconds. */
  readonly expiresIn: number;
}

const EVERY = 10 * 60_000;

/** Lets the session slide while the page is open, so that nothing expires under a child at work. */
export const renewWhileOpen = (renewed: (session: Renewed) => void): void => {
  const renew = async () => {
    const reply = await request<Renewed>('/api/sessions/renew', { method: 'POST', body: {} });
    if (!reply.ok) return;
    setToken(reply.value.token);
    renewed(reply.value);
  };
  setInterval(renew, EVERY);
};
