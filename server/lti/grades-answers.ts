/**
 * What a platform's answer to a score means for whoever sent it. Pure: the sender decides what to do.
 * Statuses as recorded from Moodle 4.5 and as documented by Canvas (recorded: tests/golden/platform-messages).
 */
import type { Result } from '../../engine/child.ts';
import type { OutboundAnswer } from './outbound.ts';
import type { OutboundFault, OutboundFaultCode } from './outbound-faults.ts';

/** Why a call did not do what it was for, whatever the call. */
export type CallReason =
  | OutboundFaultCode
  | 'busy'
  | 'unavailable'
  | 'failing'
  | 'strangeAnswer'
  | TokenReason
  | 'scopeMissing'
  | 'unauthorised'
  | 'forbidden'
  | 'notGradable'
  | 'refused';

/** Faults of a service token. */
export const TOKEN_REASONS = [
  'tokenRefused',
  'tokenUnavailable',
  'keySealed',
  'platformSuspended',
  'platformUnknown',
] as const;
type TokenReason = (typeof TOKEN_REASONS)[number];

/** Worth another try. `retryAfter` in ms, when the platform said how long to wait. */
export interface Later {
  kind: 'later';
  reason: CallReason;
  status: number | null;
  retryAfter: number | null;
  /** The request may have been carried out although no good answer came. */
  doubtful: boolean;
}

/** Another try would get the same answer. */
export interface Refused {
  kind: 'refused';
  reason: CallReason;
  status: number | null;
}

export type ScoreAnswer =
  | { kind: 'accepted'; status: number }
  /** The platform holds a score with this timestamp or a later one. */
  | { kind: 'older'; status: number }
  | { kind: 'gone'; status: number }
  /** The token was not taken; `granted` tells whether it carried the scope at all. */
  | { kind: 'unauthorised'; status: number; granted: boolean }
  | Later
  | Refused;

const NEVER_HEALS: readonly OutboundFaultCode[] = ['badAddress', 'notHttps', 'refusedAddress'];
const MAY_HAVE_ARRIVED: readonly OutboundFaultCode[] = ['timeout', 'broken', 'tooLarge', 'stopped'];
const LONGEST_WAIT = 24 * 3_600_000;

/** `granted`: whether the token used carries the score scope. `now` in ms, for a Retry-After that is a date. */
export function scoreAnswer(
  sent: Result<OutboundAnswer, OutboundFault>,
  granted: boolean,
  now: number,
): ScoreAnswer {
  if (!sent.ok) return faultAnswer(sent.fault);
  const { status, body } = sent.value;
  if (status >= 200 && status < 300) return takenOrPage(status, body);
  if (status === 401) return { kind: 'unauthorised', status, granted };
  if (status === 404 || status === 410) return { kind: 'gone', status };
  if (status === 409 || (status === 400 && saysOlder(body))) return { kind: 'older', status };
  return refusalOf(status, body) ?? laterByStatus(sent.value, now);
}

/** For calls other than a score: what stands in the way, or null when the answer is good. */
export function obstacle(
  sent: Result<OutboundAnswer, OutboundFault>,
  now: number,
): Later | Refused | null {
  if (!sent.ok) return faultAnswer(sent.fault);
  const { status } = sent.value;
  if (status >= 200 && status < 300) return null;
  if (status < 500 && status !== 429 && status !== 408)
    return { kind: 'refused', reason: 'refused', status };
  return laterByStatus(sent.value, now);
}

function faultAnswer({ code, ...fault }: OutboundFault): Later | Refused {
  const status = fault.status ?? null;
  if (NEVER_HEALS.includes(code)) return { kind: 'refused', reason: code, status };
  const doubtful = MAY_HAVE_ARRIVED.includes(code);
  return { kind: 'later', reason: code, status, retryAfter: null, doubtful };
}

/** A 2xx with a web page is a login form or a proxy's notice, not a gradebook. */
function takenOrPage(status: number, body: string): ScoreAnswer {
  if (!body.trimStart().startsWith('<')) return { kind: 'accepted', status };
  return { kind: 'later', reason: 'strangeAnswer', status, retryAfter: null, doubtful: true };
}

/** Canvas answers an older score with 400 and a text; Moodle's 400 has the body `[]` and is about the person. */
function saysOlder(body: string): boolean {
  return /timestamp|last updated|older/i.test(body);
}

/** About the person: 422 at Canvas; at Moodle 400 without a word, where its other 400s give a reason. */
function refusalOf(status: number, body: string): Refused | null {
  const silent = /^(\[\])?$/.test(body.trim());
  if (status === 422 || (status === 400 && (silent || /student|enrol|gradable/i.test(body))))
    return { kind: 'refused', reason: 'notGradable', status };
  if (status === 403) return { kind: 'refused', reason: 'forbidden', status };
  if (status >= 400 && status < 500 && status !== 408 && status !== 429)
    return { kind: 'refused', reason: 'refused', status };
  return null;
}

/** 429 and 5xx. A 5xx is in doubt: the platform may have failed after it stored the score. */
function laterByStatus({ status, headers }: OutboundAnswer, now: number): Later {
  const reason = status === 429 ? 'busy' : status === 500 ? 'failing' : 'unavailable';
  const retryAfter = waitAsked(headers['retry-after'], now);
  return { kind: 'later', reason, status, retryAfter, doubtful: status >= 500 };
}

/** Retry-After in ms, from seconds or an HTTP date (RFC 9110 §10.2.3); at most a day. */
function waitAsked(value: string | undefined, now: number): number | null {
  if (value === undefined) return null;
  const wait = /^\d+$/.test(value.trim()) ? Number(value) * 1000 : Date.parse(value) - now;
  return Number.isFinite(wait) ? Math.min(Math.max(wait, 0), LONGEST_WAIT) : null;
}
