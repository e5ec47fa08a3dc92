/** Service tokens: one request for all who wait, kept until a minute before they end, never longer asked than needed. */
import { createPrivateKey, type KeyObject, randomUUID } from 'node:crypto';
import { SignJWT } from 'jose';
import type { Fault, Result } from '../../engine/child.ts';
import type { Registration } from '../platforms/registration.ts';
import type { Platforms } from '../platforms/store.ts';
import type { ServiceToken } from './grades.ts';
import type { Outbound, OutboundAnswer } from './outbound.ts';
import type { Provider } from './provider.ts';
import { WrongSeal } from './seal.ts';

interface Token {
  token: string;
  scopes: readonly string[];
}
type Answer = Result<Token, Fault>;
type Lasting = Result<Token & { seconds: number }, Fault>;

/** A token that ends sooner than this is asked for anew, in ms. */
const MARGIN = 60_000;
/** Lifetime of our assertion, in seconds; platforms take up to five minutes. */
const ASSERTION_LIFETIME = 120;
/** Where a platform does not say how long its token lasts, in seconds. */
const ASSUMED_LIFETIME = 300;
const ASSERTION_TYPE = 'urn:ietf:params:oauth:client-assertion-type:jwt-bearer';

export interface TokenParts {
  platforms: Platforms;
  provider: Pick<Provider, 'privateKey'>;
  outbound: Outbound;
  clock?: () => number;
}

/**
 * Faults: those of the outbound client; `scopeRefused` nothing of what was asked is granted;
 * `tokenRefused` the platform does not accept us (`reason` its code); `tokenUnavailable` it has trouble;
 * `keySealed` our key was sealed with another secret than the one that is set; `platformUnknown`, `platformSuspended`.
 */
export function createTokens(parts: TokenParts): ServiceToken {
  const clock = parts.clock ?? Date.now;
  const kept = new Map<string, { until: number; value: Token }>();
  const asking = new Map<string, Promise<Answer>>();

  async function ask(key: string, registration: string, scopes: readonly string[]) {
    const answer = await request(parts, registration, scopes);
    if (!answer.ok) return answer;
    const { seconds, ...value } = answer.value;
    kept.set(key, { until: clock() + seconds * 1000 - MARGIN, value });
    return { ok: true, value } as const;
  }

  return (registration, scopes, { renew = false } = {}) => {
    const key = [registration, ...[...scopes].sort()].join(' ');
    const held = kept.get(key);
    if (!renew && held !== undefined && clock() < held.until)
      return Promise.resolve({ ok: true, value: held.value });
    const under = asking.get(key);
    if (under !== undefined) return under;
    const started = ask(key, registration, scopes).finally(() => asking.delete(key));
    asking.set(key, started);
    return started;
  };
}

async function request(
  { platforms, provider, outbound }: TokenParts,
  id: string,
  scopes: readonly string[],
): Promise<Lasting> {
  const registration = await platforms.byId(id);
  if (registration === null) return fault('platformUnknown');
  if (registration.status !== 'active') return fault('platformSuspended');
  const pem = await provider.privateKey(registration).catch(unlessSealed);
  if (pem === null) return fault('platformUnknown');
  if (pem instanceof WrongSeal) return fault('keySealed');
  const answer = await outbound.send({
    url: registration.tokenUrl,
    method: 'POST',
    headers: {
      'content-type': 'application/x-www-form-urlencoded',
      accept: 'application/json',
    },
    body: new URLSearchParams({
      grant_type: 'client_credentials',
      client_assertion_type: ASSERTION_TYPE,
      client_assertion: await assertion(registration, createPrivateKey(pem)),
      scope: [...scopes].sort().join(' '),
    }).toString(),
  });
  return answer.ok ? readAnswer(answer.value, scopes) : answer;
}

function unlessSealed(error: unknown): WrongSeal {
  if (error instanceof WrongSeal) return error;
  throw error;
}

/** Security Framework 1.0 §4.1.1: signed by us, for the platform's authorization server, once. */
function assertion({ clientId, tokenUrl, authServer, kid }: Registration, key: KeyObject) {
  return new SignJWT()
    .setProtectedHeader({ alg: 'RS256', typ: 'JWT', kid })
    .setIssuer(clientId)
    .setSubject(clientId)
    .setAudience(authServer ?? tokenUrl)
    .setIssuedAt()
    .setExpirationTime(`${ASSERTION_LIFETIME}s`)
    .setJti(randomUUID())
    .sign(key);
}

/** RFC 6749 §5; the content type is not looked at, for platforms get it wrong. */
function readAnswer({ status, body }: OutboundAnswer, asked: readonly string[]): Lasting {
  const answer = json(body);
  if (status >= 500 || status === 429) return fault('tokenUnavailable', `status ${status}`);
  if (status !== 200) return refusal(answer, status);
  const { access_token: token, scope, expires_in: seconds } = answer;
  if (typeof token !== 'string' || token === '') return fault('tokenUnavailable', 'no token');
  const scopes = typeof scope === 'string' ? scope.split(' ').filter(Boolean) : asked;
  if (!asked.some((one) => scopes.includes(one))) return fault('scopeRefused');
  return { ok: true, value: { token, scopes, seconds: Number(seconds) || ASSUMED_LIFETIME } };
}

function refusal({ error }: Record<string, unknown>, status: number): Lasting {
  if (error === 'invalid_scope') return fault('scopeRefused');
  const code = typeof error === 'string' && /^[a-z_]{1,40}$/.test(error) ? error : null;
  return fault('tokenRefused', code ?? `status ${status}`);
}

function json(body: string): Record<string, unknown> {
  try {
    return Object(JSON.parse(body));
  } catch {
    return {};
  }
}

function fault(code: string, reason?: string): { ok: false; fault: Fault } {
  return { ok: false, fault: { code, at: 'registration', ...(reason && { reason }) } };
}
