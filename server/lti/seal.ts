import { createCipheriv, createDecipheriv, hkdfSync, randomBytes } from 'node:crypto';

/** Encrypts with a key that `secret` alone yields; what was changed since does not open (AES-256-GCM). */
export function seal(text: string, secret: string): string {
  const iv = randomBytes(12);
  const cipher = createCipheriv('aes-256-gcm', keyOf(secret), iv);
  const body = Buffer.concat([cipher.update(text, 'utf8'), cipher.final()]);
  return Buffer.concat([iv, cipher.getAuthTag(), body]).toString('base64');
}

/** The secret is another one, or the text was changed. */
export class WrongSeal extends Error {}

/** @throws {WrongSeal} */
export function unseal(sealed: string, secret: string): string {
  const bytes = Buffer.from(sealed, 'base64');
  const opening = createDecipheriv('aes-256-gcm', keyOf(secret), bytes.subarray(0, 12));
  opening.setAuthTag(bytes.subarray(12, 28));
  const body = opening.update(bytes.subarray(28));
  try {
    return Buffer.concat([body, opening.final()]).toString('utf8');
  } catch {
    throw new WrongSeal();
  }
}

/** A key of its own for one use of a secret, so that no two uses share one. */
export function derive(secret: string, use: string): string {
  return Buffer.from(hkdfSync('sha256', secret, '', use, 32)).toString('hex');
}

function keyOf(secret: string): Buffer {
  return Buffer.from(hkdfSync('sha256', secret, '', 'seal', 32));
}
