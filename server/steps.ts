import type { ErrorRequestHandler, RequestHandler } from 'express';
import helmet from 'helmet';
import { sendRefusal } from './answer.ts';
import { failureOf } from './database/failure.ts';
import { ERRORS, type ErrorCode } from './errors.ts';
import type { Log } from './log.ts';

/** Longer than any path of ours; what is longer was made up, and anybody could fill the disk with it. */
const LONGEST_PATH = 120;

/** One line a request. The query stays out: platforms put hints about persons there. */
export function logRequests(log: Log): RequestHandler {
  return (req, res, next) => {
    const began = process.hrtime.bigint();
    const { method } = req;
    const path = req.path.slice(0, LONGEST_PATH);
    res.once('finish', () => {
      const ms = Number((process.hrtime.bigint() - began) / 1_000_000n);
      const line = { method, path, status: res.statusCode, ms, code: res.locals.refused };
      log[levelOf(res.statusCode)](line, 'request');
    });
    next();
  };
}

function levelOf(status: number): 'error' | 'info' | 'debug' {
  if (status >= 500) return 'error';
  return status >= 400 ? 'info' : 'debug';
}

/**
 * Headers of every answer. Everything comes from our own origin; `res.locals.frameAncestors` names who may frame the
 * answer, and nobody may unless a step said so.
 */
export function securityHeaders(https: boolean): RequestHandler {
  return helmet({
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'none'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'"],
        imgSrc: ["'self'", 'data:'],
        fontSrc: ["'self'"],
        connectSrc: ["'self'"],
        manifestSrc: ["'self'"],
        formAction: ["'self'"],
        baseUri: ["'none'"],
        frameAncestors: [(_req, res) => ancestorsOf(res as unknown as { locals?: Locals })],
      },
    },
    // Old browsers' way to forbid what frame-ancestors allows.
    frameguard: false,
    // A launch that a frame opened in a tab of its own must still reach the platform's storage through its opener.
    crossOriginOpenerPolicy: false,
    strictTransportSecurity: https,
  });
}

interface Locals {
  readonly frameAncestors?: readonly string[];
}

function ancestorsOf({ locals }: { locals?: Locals }): string {
  const known = locals?.frameAncestors ?? [];
  return known.length > 0 ? ["'self'", ...known].join(' ') : "'none'";
}

/** For pages whose platform is not known (a reload): every registered platform may frame them. */
export function framedByPlatforms(origins: () => Promise<readonly string[]>): RequestHandler {
  let last: readonly string[] = [];
  return async (_req, res, next) => {
    last = await origins().catch(() => last);
    res.locals.frameAncestors = last;
    next();
  };
}

export const neverCached: RequestHandler = (_req, res, next) => {
  res.setHeader('Cache-Control', 'no-store');
  next();
};

/** Refuses to write while the disk is full, before the database has to. */
export function needsRoom(hasRoom: () => boolean): RequestHandler {
  return (req, res, next) => {
    if (req.method === 'GET' || hasRoom()) next();
    else sendRefusal(res, { code: 'diskFull' });
  };
}

/** A body that is not declared as JSON would be skipped in silence. */
export const onlyJson: RequestHandler = (req, res, next) => {
  const empty =
    req.headers['transfer-encoding'] === undefined && !Number(req.headers['content-length']);
  if (req.method === 'GET' || empty || req.is('application/json')) next();
  else sendRefusal(res, { code: 'notJson' });
};

export const nothingHere: RequestHandler = (_req, res) => sendRefusal(res, { code: 'notFound' });

/** The last step: whatever was thrown becomes a code, and its cause goes to the log. */
export function failures(log: Log): ErrorRequestHandler {
  return (fault, req, res, next) => {
    if (res.headersSent) return next(fault);
    const code = codeOf(fault);
    if (code === 'broken') log.error({ err: fault, path: req.path }, ERRORS.broken.detail);
    else if (ERRORS[code].status >= 500) log.warn({ code, err: fault }, ERRORS[code].detail);
    sendRefusal(res, { code });
  };
}

function codeOf(fault: unknown): ErrorCode {
  const { type, status } = (fault ?? {}) as { type?: unknown; status?: unknown };
  if (type === 'entity.too.large') return 'bodyTooLarge';
  if (typeof type === 'string' && Number(status) < 500) return 'notJson';
  if (fault instanceof URIError || isFilesRefusal(status)) return 'notFound';
  return failureOf(fault) ?? 'broken';
}

/** What a file is asked for that it cannot answer (a bad path, range or condition) is no fault of ours. */
function isFilesRefusal(status: unknown): boolean {
  return typeof status === 'number' && status >= 400 && status < 500;
}
