import { type RequestHandler, Router } from 'express';
import { answer, sendRefusal, sessionOf } from '../answer.ts';
import { done, refuse } from '../errors.ts';
import type { Role } from '../lti/launch.ts';
import type { SessionService } from './service.ts';
import { bearerIn } from './token.ts';

/** Lets nobody past without a live session; the routes behind it find it by `sessionOf`. */
export function requireSession(sessions: SessionService): RequestHandler {
  return (req, res, next) => {
    sessions.find(req.headers.authorization).then((session) => {
      if (session === null) return sendRefusal(res, { code: 'noSession' });
      res.locals.session = session;
      next();
    }, next);
  };
}

export function requireRole(...roles: readonly Role[]): RequestHandler {
  return (_req, res, next) => {
    if (roles.includes(sessionOf(res).role)) next();
    else sendRefusal(res, { code: 'notYours' });
  };
}

/** `POST /renew`: the page calls it while it is open, so that nothing expires under a child at work. */
export function sessionRoutes(sessions: SessionService): Router {
  const router = Router();
  router.post(
    '/renew',
    answer(async (req, res) => {
      const renewed = await sessions.renew(sessionOf(res));
      if (renewed === null) return refuse('noSession');
      return done({ token: bearerIn(req.headers.authorization), ...renewed });
    }),
  );
  return router;
}
