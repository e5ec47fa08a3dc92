import { readFileSync } from 'node:fs';
import { createServer, type IncomingMessage } from 'node:http';
import type { AddressInfo } from 'node:net';
import { base64url, type CryptoKey, exportJWK, generateKeyPair, type JWK, SignJWT } from 'jose';

export const LTI = 'https://purl.imsglobal.org/spec/lti/claim';
export const MEMBERSHIP = 'http://purl.imsglobal.org/vocab/lis/v2/membership';

export type Claims = Record<string, unknown>;

/** Claims of one launch as a real platform sent them (Moodle 4.5.6, see the file), free to change. */
export function recordedClaims(name: string, number = 0): Claims {
  const file = new URL(`../golden/platform-messages/${name}.json`, import.meta.url);
  const recorded = JSON.parse(readFileSync(file, 'utf8'));
  return (recorded.cases?.[number] ?? recorded).claims;
}

interface PlatformKey {
  kid: string;
  sign: CryptoKey;
  jwk: JWK;
}

export interface TokenAnswer {
  status: number;
  body: string;
}

/** A platform that signs whatever a test wants; its key set and token service are real, over HTTP on loopback. */
export interface TestPlatform {
  issuer: string;
  clientId: string;
  jwksUrl: string;
  tokenUrl: string;
  key: PlatformKey;
  /** Reads of the key set so far. */
  reads: number;
  /** Forms that asked for a token. */
  asked: Record<string, string>[];
  answerToken(form: Record<string, string>): Promise<TokenAnswer> | TokenAnswer;
  /** Replaces what the key set holds. */
  publish(...keys: JWK[]): void;
  newKey(kid: string): Promise<PlatformKey>;
  /** A token with these claims; `header` and `key` replace what is right. */
  sign(claims: Claims, header?: object, key?: CryptoKey): Promise<string>;
  close(): Promise<void>;
}

export async function openPlatform(
  issuer = 'https://moodle.example',
  clientId = 'clientid0000001',
): Promise<TestPlatform> {
  const key = await keyOf(issuer);
  let published = [key.jwk];
  const server = createServer(async (request, response) => {
    response.setHeader('content-type', 'text/html; charset=utf-8');
    if (request.url === '/keys') {
      platform.reads += 1;
      response.end(JSON.stringify({ keys: published }));
      return;
    }
    const form = Object.fromEntries(new URLSearchParams(await bodyOf(request)));
    platform.asked.push(form);
    const answer = await platform.answerToken(form);
    response.writeHead(answer.status).end(answer.body);
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;

  const platform: TestPlatform = {
    issuer,
    clientId,
    jwksUrl: `${origin}/keys`,
    tokenUrl: `${origin}/token`,
    key,
    reads: 0,
    asked: [],
    answerToken: (form) => ({
      status: 200,
      body: JSON.stringify({
        access_token: `token-${platform.asked.length}`,
        token_type: 'Bearer',
        expires_in: 3600,
        scope: form.scope,
      }),
    }),
    publish: (...keys) => {
      published = keys;
    },
    newKey,
    sign: (claims, header = {}, signer = key.sign) =>
      new SignJWT(claims)
        .setProtectedHeader({ alg: 'RS256', typ: 'JWT', kid: key.kid, ...header })
        .sign(signer),
    close: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
  return platform;
}

/** Making a key takes long: a platform of the same issuer has the same one all through a file. */
const made = new Map<string, Promise<PlatformKey>>();

function keyOf(issuer: string): Promise<PlatformKey> {
  const key = made.get(issuer) ?? newKey('platform-kid-1');
  made.set(issuer, key);
  return key;
}

async function newKey(kid: string): Promise<PlatformKey> {
  const { privateKey, publicKey } = await generateKeyPair('RS256', { extractable: true });
  const jwk = { ...(await exportJWK(publicKey)), kid, alg: 'RS256', use: 'sig' };
  return { kid, sign: privateKey, jwk };
}

/** A token without a signature, as a forger would send it. */
export function unsigned(claims: Claims): string {
  const part = (value: object) => base64url.encode(JSON.stringify(value));
  return `${part({ alg: 'none', typ: 'JWT', kid: 'platform-kid-1' })}.${part(claims)}.`;
}

async function bodyOf(request: IncomingMessage): Promise<string> {
  let body = '';
  for await (const chunk of request) body += chunk;
  return body;
}
