import type { Request, Response } from 'express';
import { type Person, personOf } from './scenario.ts';

const COOKIE = 'harbour_lane';

export interface Session {
  key: string;
  person: Person;
}

export interface Sessions {
  /** Who is signed in here; null: nobody, or the cookie did not come along. */
  of(request: Request): Session | null;
  signIn(response: Response, person: Person): Session;
}

const cookieOf = (request: Request): string | undefined =>
  request.headers.cookie
    ?.split(/;\s*/)
    .find((pair) => pair.startsWith(`${COOKIE}=`))
    ?.slice(COOKIE.length + 1);

/** Sessions live as long as the process: signing in again is one click. */
export const createSessions = (): Sessions => {
  const people = new Map<string, string>();
  return {
    of(request) {
      const key = cookieOf(request);
      const person = personOf((key && people.get(key)) ?? '');
      return key && person ? { key, person } : null;
    },
    signIn(response, person) {
      const key = crypto.randomUUID();
      people.set(key, person.id);
      response.cookie(COOKIE, key, { httpOnly: true, sameSite: 'lax' });
      return { key, person };
    },
  };
};
