import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

/** What the database keeps of a secret that somebody will show us again. */
export function digest(secret: string): string {
  return createHash('sha256').update(secret).digest('hex');
}

export function sameDigest(secret: string, expected: string): boolean {
  return timingSafeEqual(Buffer.from(digest(secret)), Buffer.from(expected));
}

/** `bytes` random bytes as hex. */
export function randomHex(bytes: number): string {
  return randomBytes(bytes).toString('hex');
}
