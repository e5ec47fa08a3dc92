/**
 * Our own small client of the Assignment and Grade Services 2.0: one score, one result, one line item.
 * One exact media type a call, because platforms refuse others; bodies are read leniently.
 */
import type { Fault, Result } from '../../engine/child.ts';
import { underLineItem, withParameter } from './grades-address.ts';
import {
  type Later,
  obstacle,
  type Refused,
  type ScoreAnswer,
  scoreAnswer,
  TOKEN_REASONS,
} from './grades-answers.ts';
import type { Outbound, OutboundAnswer } from './outbound.ts';
import { OUTBOUND_FAULTS, type OutboundFault } from './outbound-faults.ts';

const AGS = 'https://purl.imsglobal.org/spec/lti-ags/scope';
const SCOPE = {
  score: `${AGS}/score`,
  result: `${AGS}/result.readonly`,
  lineitem: `${AGS}/lineitem.readonly`,
} as const;

const TYPE = {
  score: 'application/vnd.ims.lis.v1.score+json',
  results: 'application/vnd.ims.lis.v2.resultcontainer+json',
  lineitem: 'application/vnd.ims.lis.v2.lineitem+json',
  lineitems: 'application/vnd.ims.lis.v2.lineitemcontainer+json',
} as const;

/**
 * A service token of a platform with the scopes it really granted. `renew` asks for one that was not used yet.
 * The fault `scopeRefused` says that the platform grants none of the scopes; others are those of the outbound client
 * and `TOKEN_REASONS`.
 */
export type ServiceToken = (
  registration: string,
  scopes: readonly string[],
  options?: { renew?: boolean },
) => Promise<Result<{ token: string; scopes: readonly string[] }, Fault>>;

/** The score body, field by field as it goes out. `timestamp` in ISO 8601 with milliseconds. */
export interface ScoreBody {
  userId: string;
  scoreGiven: number;
  scoreMaximum: number;
  comment: string;
  timestamp: string;
  activityProgress: 'Completed';
  gradingProgress: 'FullyGraded';
}

/** A person's mark as the platform shows it, a teacher's change included. `timestamp` in ms, where it is told. */
export interface PlatformResult {
  score: number;
  maximum: number;
  timestamp: number | null;
}

export interface LineItem {
  id: string;
  resourceLinkId: string | null;
}

export type Reading<T> =
  | { kind: 'read'; value: T }
  /** The platform does not let us look, or has nothing under this address. */
  | { kind: 'unreadable'; status: number | null }
  | Later;

/** What was answered, and the platform's clock at that moment (ms), where it is told. */
export interface Posted {
  answer: ScoreAnswer;
  platformClock: number | null;
}

export interface Grades {
  postScore(
    registration: string,
    lineitem: string,
    score: ScoreBody,
    renew: boolean,
  ): Promise<Posted>;
  /** `null`: the person has no mark. */
  readResult(
    registration: string,
    lineitem: string,
    subject: string,
  ): Promise<Reading<PlatformResult | null>>;
  readLineItem(registration: string, lineitem: string): Promise<Reading<LineItem>>;
  /** The line items of one resource link. */
  findLineItems(
    registration: string,
    lineitems: string,
    resourceLink: string,
  ): Promise<Reading<LineItem[]>>;
}

export function createGrades(outbound: Outbound, token: ServiceToken, clock: () => number): Grades {
  return { postScore, readResult, readLineItem, findLineItems };

  async function postScore(
    registration: string,
    lineitem: string,
    score: ScoreBody,
    renew: boolean,
  ): Promise<Posted> {
    if (!URL.canParse(lineitem))
      return unposted({ kind: 'refused', reason: 'badAddress', status: null });
    const allowed = await token(registration, [SCOPE.score], { renew });
    if (!allowed.ok) return unposted(withoutToken(allowed.fault));
    const sent = await outbound.send({
      url: underLineItem(lineitem, 'scores'),
      method: 'POST',
      headers: { authorization: `Bearer ${allowed.value.token}`, 'content-type': TYPE.score },
      body: JSON.stringify(score),
    });
    const granted = allowed.value.scopes.includes(SCOPE.score);
    return { answer: scoreAnswer(sent, granted, clock()), platformClock: clockOf(sent) };
  }

  async function readResult(registration: string, lineitem: string, subject: string) {
    if (!URL.canParse(lineitem)) return { kind: 'unreadable' as const, status: null };
    const address = withParameter(underLineItem(lineitem, 'results'), 'user_id', subject);
    const read = await get(registration, SCOPE.result, address, TYPE.results);
    return parsed(read, (body) => resultOf(subject, body));
  }

  async function readLineItem(registration: string, lineitem: string) {
    return parsed(await get(registration, SCOPE.lineitem, lineitem, TYPE.lineitem), lineItem);
  }

  async function findLineItems(registration: string, lineitems: string, resourceLink: string) {
    if (!URL.canParse(lineitems)) return { kind: 'unreadable' as const, status: null };
    const address = withParameter(lineitems, 'resource_link_id', resourceLink);
    const read = await get(registration, SCOPE.lineitem, address, TYPE.lineitems);
    return parsed(read, (body) =>
      listed(body)
        .map(lineItem)
        .filter((item) => item !== undefined)
        .filter((item) => (item.resourceLinkId ?? resourceLink) === resourceLink),
    );
  }

  /** A GET with a token; one that is no longer taken is renewed once. */
  async function get(
    registration: string,
    scope: string,
    url: string,
    accept: string,
  ): Promise<Reading<string>> {
    for (const renew of [false, true]) {
      const allowed = await token(registration, [scope], { renew });
      if (!allowed.ok) return unread(withoutToken(allowed.fault));
      const headers = { authorization: `Bearer ${allowed.value.token}`, accept };
      const sent = await outbound.send({ url, headers });
      if (!renew && sent.ok && sent.value.status === 401) continue;
      const obstructed = obstacle(sent, clock());
      if (obstructed !== null) return unread(obstructed);
      if (sent.ok) return { kind: 'read', value: sent.value.body };
    }
    return { kind: 'unreadable', status: 401 };
  }
}

function unposted(answer: Later | Refused): Posted {
  return { answer, platformClock: null };
}

function unread(obstructed: Later | Refused): Reading<never> {
  if (obstructed.kind === 'later') return obstructed;
  return { kind: 'unreadable', status: obstructed.status };
}

/** No token, so nothing was sent: never in doubt. */
function withoutToken({ code }: Fault): Later | Refused {
  if (code === 'scopeRefused') return { kind: 'refused', reason: 'scopeMissing', status: null };
  if (code === 'platformUnknown') return { kind: 'refused', reason: code, status: null };
  const known = [...OUTBOUND_FAULTS, ...TOKEN_REASONS].find((one) => one === code);
  const reason = known ?? 'tokenUnavailable';
  return { kind: 'later', reason, status: null, retryAfter: null, doubtful: false };
}

function clockOf(sent: Result<OutboundAnswer, OutboundFault>): number | null {
  return sent.ok ? timeOf(sent.value.headers.date) : null;
}

/** A body that is not what was asked for says as little as no answer: try again later. */
function parsed<T>(read: Reading<string>, parse: (body: unknown) => T | undefined): Reading<T> {
  if (read.kind !== 'read') return read;
  const value = parse(jsonOf(read.value));
  if (value !== undefined) return { kind: 'read', value };
  return { kind: 'later', reason: 'strangeAnswer', status: 200, retryAfter: null, doubtful: false };
}

/** Undefined when it is not JSON. An empty body is an empty list. */
function jsonOf(body: string): unknown {
  if (body.trim() === '') return [];
  try {
    return JSON.parse(body);
  } catch {
    return undefined;
  }
}

function listed(body: unknown): unknown[] {
  return Array.isArray(body) ? body : [];
}

/** The person's entry of a result container; a platform may ignore the filter and send everybody. */
function resultOf(subject: string, body: unknown): PlatformResult | null | undefined {
  if (!Array.isArray(body)) return undefined;
  const mine = body.find((entry) => String(entry?.userId) === subject);
  const score = numberOf(mine?.resultScore);
  if (score === null) return null;
  return { score, maximum: numberOf(mine.resultMaximum) ?? 1, timestamp: timeOf(mine.timestamp) };
}

function lineItem(body: unknown): LineItem | undefined {
  const { id, resourceLinkId } = (body ?? {}) as Record<string, unknown>;
  if (typeof id !== 'string') return undefined;
  return { id, resourceLinkId: resourceLinkId == null ? null : String(resourceLinkId) };
}

function numberOf(value: unknown): number | null {
  const number = typeof value === 'string' && value.trim() !== '' ? Number(value) : value;
  return typeof number === 'number' && Number.isFinite(number) ? number : null;
}

function timeOf(value: unknown): number | null {
  const time = typeof value === 'string' ? Date.parse(value) : Number.NaN;
  return Number.isFinite(time) ? time : null;
}
