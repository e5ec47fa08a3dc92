import { createHash, createHmac, randomBytes } from 'node:crypto';
import type { Person } from './schema.ts';

/** 256 random bits: nothing to guess, nothing to read out of it. */
export const newToken = (): string => randomBytes(32).toString('base64url');

export const digestOf = (token: string): string =>
  createHash('sha256').update(token).digest('base64url');

/** The token of an `Authorization: Bearer …` header (RFC 6750 §2.1), or `null`. */
export function bearerIn(header: string | undefined): string | null {
  return /^Bearer ([A-Za-z0-9_-]{43})$/i.exec(header ?? '')?.[1] ?? null;
}

/** Tells persons apart on a shared device without telling who they are. */
export function personHash(person: Person, secret: string): string {
  const { registration, deployment, subject } = person;
  return createHmac('sha256', secret)
    .update(JSON.stringify(['person', registration, deployment, subject]))
    .digest('base64url')
    .slice(0, 22);
}
