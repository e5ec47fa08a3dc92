/**
 * The claims of a signed launch, checked one by one in the order of the standard: one small check a
 * rule, all pure. The first that fails names the refusal.
 */
import type { Registration } from '../platforms/registration.ts';
import { sameDigest } from './digest.ts';
import { type Checked, type LaunchRefusal, type RefusalCode, refused } from './refusals.ts';
import { CLAIM, type Claims, isId, MESSAGE, member } from './vocabulary.ts';

/** What a launch is held against. */
export interface Expected {
  registration: Registration;
  /** Digest of the nonce that was issued with this state. */
  nonce: string;
  /** Our public origin. */
  url: string;
  /** Seconds since 1970. */
  now: number;
}

/** Schools' clocks differ; the single use of state and nonce is what stops replay. Seconds. */
const LEEWAY = 60;
/** A platform's token may be this old, in seconds; most live one minute. */
const OLDEST = 300;

type Check = (claims: Claims, expected: Expected) => RefusalCode | LaunchRefusal | null;

/** Security Framework 1.0 §5.1.3 steps 2 to 5, 7 to 9; Core 1.3 §5.3 and §5.4. */
const CHECKS: readonly Check[] = [
  issuer,
  audience,
  authorizedParty,
  expiry,
  notBefore,
  issuedAt,
  nonce,
  version,
  messageType,
  deployment,
  target,
  resourceLink,
  subject,
  roles,
];

export function checkClaims(claims: Claims, expected: Expected): Checked<Claims> {
  for (const check of CHECKS) {
    const found = check(claims, expected);
    if (found !== null)
      return typeof found === 'string' ? refused(found) : { ok: false, refusal: found };
  }
  return { ok: true, value: claims };
}

function issuer({ iss }: Claims, { registration }: Expected) {
  return iss === registration.issuer ? null : 'issuerWrong';
}

/** We trust no audience but ourselves; others are borne only if `azp` says that the token is for us. */
function audience({ aud, azp }: Claims, { registration }: Expected) {
  const named: unknown[] = Array.isArray(aud) ? aud : [aud];
  if (!named.includes(registration.clientId)) return 'audienceWrong';
  return named.length === 1 || azp !== undefined ? null : 'audienceWrong';
}

function authorizedParty({ azp }: Claims, { registration }: Expected) {
  return azp === undefined || azp === registration.clientId ? null : 'partyWrong';
}

function expiry({ exp }: Claims, { now }: Expected) {
  return isTime(exp) && exp + LEEWAY > now ? null : 'expired';
}

function notBefore({ nbf }: Claims, { now }: Expected) {
  return nbf === undefined || (isTime(nbf) && nbf - LEEWAY <= now) ? null : 'notYetValid';
}

function issuedAt({ iat }: Claims, { now }: Expected) {
  const good = isTime(iat) && iat - LEEWAY <= now && iat + OLDEST >= now;
  return good ? null : 'issuedWrong';
}

function nonce({ nonce: value }: Claims, expected: Expected) {
  return isId(value) && sameDigest(value, expected.nonce) ? null : 'nonceWrong';
}

function version(claims: Claims) {
  return claims[CLAIM.version] === '1.3.0' ? null : 'versionWrong';
}

function messageType(claims: Claims) {
  const type = claims[CLAIM.messageType];
  if (type === MESSAGE.deepLinking) return 'deepLinkingNotOffered';
  return type === MESSAGE.resource || type === MESSAGE.review ? null : 'messageUnknown';
}

function deployment(claims: Claims, { registration }: Expected) {
  const id = claims[CLAIM.deployment];
  if (!isId(id)) return 'deploymentMissing';
  const known = registration.deployments.includes(id);
  return known ? null : ({ code: 'deploymentUnknown', deployment: id } as const);
}

function target(claims: Claims, { url }: Expected) {
  const address = claims[CLAIM.target];
  const ours =
    typeof address === 'string' && URL.canParse(address) && new URL(address).origin === url;
  return ours ? null : 'targetWrong';
}

function resourceLink(claims: Claims) {
  return isId(member(claims[CLAIM.resourceLink], 'id')) ? null : 'resourceLinkMissing';
}

/** Absent in an anonymous launch (Core §5.3.6); if given it must be one. */
function subject({ sub }: Claims) {
  return sub === undefined || (isId(sub) && isAscii(sub)) ? null : 'subjectWrong';
}

/** May be empty, but not missing (Core §5.3.7). */
function roles(claims: Claims) {
  return Array.isArray(claims[CLAIM.roles]) ? null : 'rolesMissing';
}

function isTime(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value);
}

function isAscii(text: string): boolean {
  return /^[\x20-\x7e]+$/.test(text);
}
