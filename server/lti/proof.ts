/** How a browser shows that a launch is its own: a value left with it at login, found again afterwards. */
import type { Request } from 'express';
import { digest } from './digest.ts';

/** A login lives ten minutes, see the store. Seconds. */
const LIFETIME = 600;

/** Names the places where the proof of one login is kept; two logins in one browser do not meet. */
export function proofKeyOf(state: string): string {
  return digest(`proof key ${state}`).slice(0, 24);
}

/** `Partitioned` brings it back into a frame even where third-party cookies are blocked. */
export function proofCookie(key: string, proof: string): string {
  return `${nameOf(key)}=${proof}; Path=/; Secure; HttpOnly; SameSite=None; Partitioned; Max-Age=${LIFETIME}`;
}

export function proofFromCookie(req: Request, key: string): string | null {
  const wanted = `${nameOf(key)}=`;
  const pairs = (req.get('cookie') ?? '').split(';').map((pair) => pair.trim());
  return pairs.find((pair) => pair.startsWith(wanted))?.slice(wanted.length) ?? null;
}

function nameOf(key: string): string {
  return `__Host-launch-${key}`;
}
