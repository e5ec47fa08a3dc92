/** The last step of a launch: the browser that began it gets its session, once, however often it asks. */
import type { Request, Response } from 'express';
import type { Log } from '../log.ts';
import { digest, sameDigest } from './digest.ts';
import type { VerifiedLaunch } from './launch.ts';
import { type Limit, senderOf } from './limits.ts';
import { proofFromCookie } from './proof.ts';
import { seal, unseal } from './seal.ts';
import type { LaunchStore, Pending } from './store.ts';

/** Opens the session of a launch; what it answers goes to the page, with the way to a tab beside it. */
export type Admit = (launch: VerifiedLaunch) => Promise<{ ok: true; value: object }>;

interface Answer {
  status: number;
  body: object;
}

export interface ConfirmParts {
  store: LaunchStore;
  admit: Admit;
  log: Log;
  refusedRequests: Limit;
}

interface Asked {
  code: string;
  proof: string | null;
}

const ERRORS = {
  malformed: { status: 400, text: 'The message does not have the right form.' },
  expired: { status: 410, text: 'Please open the activity again from your course page.' },
  noProof: { status: 403, text: 'This browser does not keep what is needed inside this frame.' },
  busy: { status: 503, text: 'Please try again.' },
} as const;

/** How long a second confirm waits for the first one's answer, and how often it looks. Milliseconds. */
const PATIENCE = 10_000;
const PAUSE = 50;

export function createConfirm(parts: ConfirmParts) {
  return async (req: Request, res: Response): Promise<void> => {
    res.setHeader('Cache-Control', 'no-store');
    const asked = fromOwnPage(req) ? readAsked(req.body) : null;
    const { status, body } =
      asked === null ? failure('malformed') : await confirm(parts, asked, req);
    const code = (body as { error?: { code: string } }).error?.code;
    if (status < 500 && code !== undefined) note(parts, senderOf(req.ip), code);
    res.status(status).json(body);
  };
}

function note({ refusedRequests, log }: ConfirmParts, sender: string, code: string): void {
  if (refusedRequests.reached(sender)) return;
  refusedRequests.count(sender);
  log.warn({ code }, 'launch not confirmed');
}

async function confirm(parts: ConfirmParts, { code, proof }: Asked, req: Request) {
  const pending = await parts.store.pending(digest(code));
  if (pending === null) return failure('expired');
  const proofs = [proofFromCookie(req, pending.proofKey), proof].filter((one) => one !== null);
  if (!proofs.some((one) => sameDigest(one, pending.proof))) {
    await parts.store.dropPending(pending._id);
    return failure('noProof', reopening(pending));
  }
  const mine = await parts.store.claim(pending._id);
  return mine ? enter(parts, pending, code) : answerOfOther(parts, code);
}

/** The one admission of this launch. What it says is kept for a repeated confirm, readable with the code only. */
async function enter({ store, admit }: ConfirmParts, pending: Pending, code: string) {
  try {
    const { value } = await admit(JSON.parse(pending.launch));
    const body = { ...value, ...reopening(pending) };
    await store.answer(pending._id, seal(JSON.stringify(body), code));
    return { status: 200, body };
  } catch (error) {
    await store.unclaim(pending._id);
    throw error;
  }
}

async function answerOfOther({ store }: ConfirmParts, code: string): Promise<Answer> {
  const until = Date.now() + PATIENCE;
  while (Date.now() < until) {
    const pending = await store.pending(digest(code));
    if (pending === null) return failure('expired');
    if (pending.answer !== null) {
      return { status: 200, body: JSON.parse(unseal(pending.answer, code)) };
    }
    await new Promise((resolve) => setTimeout(resolve, PAUSE));
  }
  return failure('busy');
}

/** To begin once more in a window of its own, where the platform allows a second sign-in: a frame may keep nothing, or not for long. */
function reopening({ initiation }: Pending): object {
  return { reopen: initiation === null ? null : { action: '/lti/login', fields: initiation } };
}

function failure(code: keyof typeof ERRORS, more: object = {}): Answer {
  const { status, text } = ERRORS[code];
  return { status, body: { error: { code, text }, ...more } };
}

/** Only a page of our own may ask; a browser says whose page it is. */
function fromOwnPage(req: Request): boolean {
  return [undefined, 'same-origin'].includes(req.get('sec-fetch-site'));
}

function readAsked(body: unknown): Asked | null {
  const { code, proof = null } = Object(body) as Record<string, unknown>;
  const good = typeof code === 'string' && (proof === null || typeof proof === 'string');
  return good && code.length === 64 ? { code, proof: proof as string | null } : null;
}
