import type { NextFunction, Request, RequestHandler, Response } from 'express';

/** What can be disturbed. */
export const SERVICES = ['keys', 'token', 'lineItems', 'scores', 'results', 'roster'] as const;
export type Service = (typeof SERVICES)[number];

/**
 * How the school misbehaves, for tests: `slow` waits before it does the work, `status` answers that status
 * without doing it, `drop` does the work and breaks the connection instead of answering.
 */
export interface Trouble {
  on: Service;
  do: 'slow' | 'status' | 'drop';
  /** How many requests it meets; then it is over. */
  times: number;
  /** For `slow`. */
  milliseconds?: number;
  /** For `status`. */
  status?: number;
  /** Value of a Retry-After header, for `status`. */
  retryAfter?: string;
}

export interface Troubles {
  waiting: Trouble[];
  /** Scopes that the tool has lost since it was set up. */
  revoked: Set<string>;
  meet(service: Service): RequestHandler;
}

const DOES = ['slow', 'status', 'drop'];

/** A trouble as the control page gets it, or why it is none. */
export const parseTrouble = (value: unknown): Trouble | string => {
  const trouble = value as Trouble;
  if (typeof value !== 'object' || value === null) return 'an object is needed';
  if (!SERVICES.includes(trouble.on)) return `on: one of ${SERVICES.join(', ')}`;
  if (!DOES.includes(trouble.do)) return `do: one of ${DOES.join(', ')}`;
  if (trouble.do === 'slow' && !(Number(trouble.milliseconds) > 0)) return 'milliseconds: a number';
  if (trouble.do === 'status' && !(Number(trouble.status) >= 400)) return 'status: 400 or more';
  return { ...trouble, times: trouble.times ?? 1 };
};

const dropConnection = (request: Request, response: Response): void => {
  response.end = () => {
    request.socket.destroy();
    return response;
  };
};

const answer = (response: Response, { status = 500, retryAfter }: Trouble): void => {
  if (retryAfter !== undefined) response.setHeader('Retry-After', retryAfter);
  response.status(status).json([]);
};

const befall = (
  trouble: Trouble,
  request: Request,
  response: Response,
  next: NextFunction,
): void => {
  if (trouble.do === 'status') {
    answer(response, trouble);
  } else if (trouble.do === 'slow') {
    setTimeout(next, trouble.milliseconds);
  } else {
    dropConnection(request, response);
    next();
  }
};

export const createTroubles = (): Troubles => {
  const waiting: Trouble[] = [];
  return {
    waiting,
    revoked: new Set(),
    meet: (service) => (request, response, next) => {
      const trouble = waiting.find((one) => one.on === service);
      if (!trouble) return next();
      trouble.times -= 1;
      if (trouble.times <= 0) waiting.splice(waiting.indexOf(trouble), 1);
      befall(trouble, request, response, next);
    },
  };
};
