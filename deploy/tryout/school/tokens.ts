import { randomBytes } from 'node:crypto';
import { type Request, type Response, Router, urlencoded } from 'express';
import { createRemoteJWKSet, errors, type JWTVerifyGetKey, jwtVerify } from 'jose';
import type { School } from './school.ts';
import { ALL_SCOPES } from './scopes.ts';

const LIFETIME = 3600;
const JWT_BEARER = 'urn:ietf:params:oauth:client-assertion-type:jwt-bearer';

// With its quotation marks unescaped, so that it is no JSON: what a real platform was seen to send.
const UNKNOWN_KEY = '{\n  "error" : ""kid" invalid, unable to lookup correct key"\n}';

/** JSON, but called text/html: what a real platform was seen to send. */
const send = (response: Response, status: number, body: object | string): void => {
  const text = typeof body === 'string' ? body : JSON.stringify(body);
  response.status(status).setHeader('Content-Type', 'text/html; charset=utf-8');
  response.end(text);
};

/** Why the assertion is refused; null: it is the tool's. `aud` and `jti` were seen not to be checked. */
const refusalOf = async (
  assertion: string,
  clientId: string,
  keys: JWTVerifyGetKey,
): Promise<object | string | null> => {
  try {
    await jwtVerify(assertion, keys, {
      algorithms: ['RS256'],
      issuer: clientId,
      subject: clientId,
      requiredClaims: ['exp', 'iat'],
    });
    return null;
  } catch (error) {
    if (error instanceof errors.JWKSNoMatchingKey) return UNKNOWN_KEY;
    return { error: 'invalid_client' };
  }
};

const forget = (school: School): void => {
  for (const [token, { expires }] of Object.entries(school.state.tokens)) {
    if (expires < Date.now()) delete school.state.tokens[token];
  }
};

/** A new access token for these scopes. */
export const grant = async (school: School, scopes: string[]) => {
  forget(school);
  const access_token = randomBytes(24).toString('hex');
  school.state.tokens[access_token] = { scopes, expires: Date.now() + LIFETIME * 1000 };
  await school.save();
  return { access_token, token_type: 'Bearer', expires_in: LIFETIME, scope: scopes.join(' ') };
};

const permitted = (school: School, asked: string): string[] => {
  const known = ALL_SCOPES.filter((scope) => !school.troubles.revoked.has(scope));
  return asked.split(' ').filter((scope) => known.includes(scope));
};

/** The token endpoint: client credentials with a signed assertion, scopes cut down to what is permitted. */
export const tokenRoutes = (school: School): Router => {
  const { clientId, keySetUrl } = school.settings.tool;
  // No cool-down: a key that is not in the cache is looked for at once.
  const keys = createRemoteJWKSet(new URL(keySetUrl), { cooldownDuration: 0 });
  const handle = async (request: Request, response: Response): Promise<void> => {
    const { grant_type, client_assertion_type, client_assertion, scope } = request.body ?? {};
    if (grant_type !== 'client_credentials' || client_assertion_type !== JWT_BEARER) {
      return send(response, 400, { error: 'unsupported_grant_type' });
    }
    const refusal = await refusalOf(String(client_assertion), clientId, keys);
    if (refusal) return send(response, 400, refusal);
    const scopes = permitted(school, String(scope ?? ''));
    if (scopes.length === 0) return send(response, 400, { error: 'invalid_scope' });
    send(response, 200, await grant(school, scopes));
  };
  return Router().post(
    '/token',
    school.troubles.meet('token'),
    urlencoded({ extended: false }),
    (request, response, next) => void handle(request, response).catch(next),
  );
};
