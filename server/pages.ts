import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { RequestHandler } from 'express';
import precompressed from 'express-static-gzip';
import { nothingHere } from './steps.ts';

/** The folder of the built pages. */
export const BUILT_PAGES = fileURLToPath(new URL('../client/dist/', import.meta.url));

/**
 * Built assets carry a hash of their content in their name, so that they may be kept for good. They alone are sent
 * compressed, as the build left them: an answer that holds a secret beside what somebody else can choose must not
 * tell by its length.
 */
export function assets(): RequestHandler[] {
  const files = precompressed(`${BUILT_PAGES}assets`, {
    enableBrotli: true,
    orderPreference: ['br'],
    index: false,
    serveStatic: { immutable: true, maxAge: '365d', fallthrough: false },
  });
  return [nameOfAFile, files];
}

/** An address that cannot be read would be answered in words that are not ours. */
const nameOfAFile: RequestHandler = (req, res, next) =>
  /^\/[\w.-]+$/.test(req.path) ? next() : nothingHere(req, res, next);

/** The page of a session that is already open; it holds nothing of the launch. */
export const page: RequestHandler = (_req, res, next) => {
  res.sendFile(
    'index.html',
    { root: BUILT_PAGES, cacheControl: false },
    (fault) => fault && next(fault),
  );
};

export const pagesAreBuilt = (): boolean => existsSync(`${BUILT_PAGES}index.html`);
