/** The public half of our keys, where platforms fetch it to verify our token requests. */
import { createPublicKey } from 'node:crypto';
import type { Request, Response } from 'express';
import type { JWK } from 'jose';
import type { LaunchStore, ToolKey } from './store.ts';

/** A new registration's key is published within this time, in ms. */
const LIFETIME = 5_000;

export interface ToolKeySet {
  keys: JWK[];
}

export async function toolKeySet(store: LaunchStore): Promise<ToolKeySet> {
  return { keys: (await store.publicKeys()).map(publicJwk) };
}

export function createKeySetRoute(store: LaunchStore) {
  let kept: { at: number; set: Promise<ToolKeySet> } | null = null;
  return async (_req: Request, res: Response): Promise<void> => {
    if (kept === null || Date.now() - kept.at > LIFETIME) {
      const set = toolKeySet(store);
      kept = { at: Date.now(), set };
      set.catch(() => {
        kept = null;
      });
    }
    const set = await kept.set;
    res.setHeader('Cache-Control', 'public, max-age=60');
    res.json(set);
  };
}

function publicJwk({ kid, pem }: ToolKey): JWK {
  return { ...createPublicKey(pem).export({ format: 'jwk' }), kid, alg: 'RS256', use: 'sig' };
}
