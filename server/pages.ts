import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import compression from 'compression';
import express, { type RequestHandler } from 'express';

/** The folder of the built pages. */
export const BUILT_PAGES = fileURLToPath(new URL('../client/dist/', import.meta.url));

/**
 * Built assets carry a hash of their content in their name, so that they may be kept for good. They alone are
 * compressed: an answer that holds a secret beside what somebody else can choose must not tell by its length.
 */
export function assets(): RequestHandler[] {
  const files = express.static(`${BUILT_PAGES}assets`, {
    immutable: true,
    maxAge: '365d',
    index: false,
    fallthrough: false,
  });
  return [compression(), files];
}

/** The page of a session that is already open; it holds nothing of the launch. */
export const page: RequestHandler = (_req, res, next) => {
  res.sendFile(
    'index.html',
    { root: BUILT_PAGES, cacheControl: false },
    (fault) => fault && next(fault),
  );
};

export const pagesAreBuilt = (): boolean => existsSync(`${BUILT_PAGES}index.html`);
