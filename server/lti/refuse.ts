/** One way out for everybody who is not let in: a page to act on, a line in the log, and a count. */
import type { Request, Response } from 'express';
import type { Log } from '../log.ts';
import { framingOrigins, originOf, type Registration } from '../platforms/registration.ts';
import { sendPage } from './headers.ts';
import { type Limit, senderOf } from './limits.ts';
import { refusalPage, refusalPolicy } from './refusal-page.ts';
import { ADVICE, countsAgainstSender, type LaunchRefusal, REFUSALS } from './refusals.ts';

export interface RefuseParts {
  log: Log;
  refusedRequests: Limit;
}

/** Whom a refused request named: only for the administrator, who compares it with the registrations. */
export interface Named {
  registration: Registration | null;
  issuer?: string;
  clientId?: string | null;
}

export type Refuse = (req: Request, res: Response, refusal: LaunchRefusal, named?: Named) => void;

export function createRefuse({ log, refusedRequests }: RefuseParts): Refuse {
  return (req, res, refusal, named = { registration: null }) => {
    const said = isOneTooMany(req, refusal) ? TOO_MANY : refusal;
    const { status, detail } = REFUSALS[said.code];
    const { registration } = named;
    res.locals.refused = said.code;
    const line = { ...said, registration: registration?.id ?? null, ...askedBy(named) };
    if (said !== TOO_MANY) log.warn({ ...line, detail }, 'launch refused');
    if (req.is('json')) return void res.status(status).json(asJson(said));
    const framing =
      registration === null ? senderOrigins(req, named) : framingOrigins(registration);
    sendPage(res, status, refusalPolicy(framing), refusalPage(said.code));
  };

  /** Refusals are counted; what would have been let in is not asked, for the same address sends a whole school. */
  function isOneTooMany(req: Request, { code }: LaunchRefusal): boolean {
    if (!countsAgainstSender(code)) return false;
    const sender = senderOf(req.ip);
    if (refusedRequests.reached(sender)) return true;
    refusedRequests.count(sender);
    return false;
  }
}

const TOO_MANY: LaunchRefusal = { code: 'tooMany' };

/** A page's own call wants no page in answer. */
function asJson({ code }: LaunchRefusal): object {
  return { error: { code, text: ADVICE[REFUSALS[code].advice].text } };
}

function askedBy({ issuer, clientId }: Named): { issuer?: string; clientId?: string } {
  return {
    ...(issuer !== undefined && originOf(issuer).length > 0 && { issuer: issuer.slice(0, 255) }),
    ...(clientId && { clientId: clientId.slice(0, 255) }),
  };
}

/**
 * Nobody registered is known: the page, on which nothing can be pressed, may be shown where the person
 * was sent from, or they would see an empty frame and not the reason.
 */
function senderOrigins(req: Request, { issuer }: Named): string[] {
  const said = [req.get('origin'), req.get('referer'), issuer];
  const origins = said.filter((one) => one !== undefined).flatMap(originOf);
  return [...new Set(origins)];
}
