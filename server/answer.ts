import type { NextFunction, Request, RequestHandler, Response } from 'express';
import * as v from 'valibot';
import { done, type Outcome, type Refusal, refuse, wireError } from './errors.ts';
import type { Session } from './sessions/schema.ts';

/** A route as a function from a request to an outcome; what it throws goes to the last step of the app. */
export function answer(route: (req: Request, res: Response) => Promise<Outcome<unknown>>) {
  const handler: RequestHandler = (req, res, next: NextFunction) => {
    route(req, res).then((outcome) => {
      if (outcome.ok) res.json(outcome.value);
      else sendRefusal(res, outcome.refusal);
    }, next);
  };
  return handler;
}

export function sendRefusal(res: Response, refusal: Refusal): void {
  const { status, body } = wireError(refusal);
  res.locals.refused = refusal.code;
  res.status(status).json(body);
}

/** The session that `requireSession` found; only routes behind that step may ask. */
export function sessionOf(res: Response): Session {
  return res.locals.session as Session;
}

/** Reads a message by its wire schema. */
export function readMessage<T>(schema: v.GenericSchema<unknown, T>, body: unknown): Outcome<T> {
  const read = v.safeParse(schema, body, { abortEarly: true });
  if (read.success) return done(read.output);
  const at = v.getDotPath(read.issues[0]) ?? 'the message';
  return refuse('badMessage', at.replace(/\.(\d+)/g, '[$1]'));
}
