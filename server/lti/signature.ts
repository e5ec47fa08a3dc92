import { compactVerify, decodeProtectedHeader } from 'jose';
import type { KeySets, PlatformKey } from './keysets.ts';
import { type Checked, refused } from './refusals.ts';
import type { Claims } from './vocabulary.ts';

/** What a good signature yields: the claims, and the key that signed them. */
export interface Signed {
  claims: Claims;
  key: PlatformKey;
}

/** Verifies an id token against the key set at `address`: RS256 only, the key named by `kid` (Security Framework 1.0 §5.1.2). */
export async function verifySignature(
  token: string,
  address: string,
  keySets: KeySets,
): Promise<Checked<Signed>> {
  const header = headerOf(token);
  if (header === null) return refused('tokenMalformed');
  if (header.alg !== 'RS256') return refused('algorithmRefused');
  if (typeof header.kid !== 'string' || header.kid === '') return refused('keyUnnamed');
  const key = await keySets.find(address, header.kid);
  if (!key.ok) return key;
  const claims = await claimsOf(token, key.value);
  return claims.ok ? { ok: true, value: { claims: claims.value, key: key.value } } : claims;
}

function headerOf(token: string): ReturnType<typeof decodeProtectedHeader> | null {
  try {
    return token.split('.').length === 3 ? decodeProtectedHeader(token) : null;
  } catch {
    return null;
  }
}

async function claimsOf(token: string, { key }: PlatformKey): Promise<Checked<Claims>> {
  let payload: Uint8Array;
  try {
    ({ payload } = await compactVerify(token, key, { algorithms: ['RS256'] }));
  } catch {
    return refused('signatureWrong');
  }
  const claims = parsed(payload);
  return claims === null ? refused('tokenMalformed') : { ok: true, value: claims };
}

function parsed(payload: Uint8Array): Claims | null {
  try {
    const value = JSON.parse(new TextDecoder().decode(payload));
    return typeof value === 'object' && value !== null && !Array.isArray(value) ? value : null;
  } catch {
    return null;
  }
}
