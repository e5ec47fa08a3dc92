import type { Request, RequestHandler, Response } from 'express';
import type { School } from './school.ts';

/** An error of a service, in the form seen at a real platform. */
export const refuse = (
  request: Request,
  response: Response,
  status: number,
  reason: string,
): void => {
  const contentType = request.headers['content-type'];
  response.status(status).json({
    status,
    reason,
    request: {
      method: request.method,
      url: request.originalUrl,
      accept: request.headers.accept ?? '*/*',
      ...(contentType === undefined ? {} : { contentType }),
    },
  });
};

const scopesOf = ({ state, troubles }: School, request: Request): string[] => {
  const token = /^Bearer (.+)$/.exec(request.headers.authorization ?? '')?.[1] ?? '';
  const granted = state.tokens[token];
  if (!granted || granted.expires < Date.now()) return [];
  return granted.scopes.filter((scope) => !troubles.revoked.has(scope));
};

/** Lets through whoever has one of the scopes; a missing scope is 401, not 403 (seen at a real platform). */
export const needs =
  (school: School, ...scopes: string[]): RequestHandler =>
  (request, response, next) => {
    const held = scopesOf(school, request);
    if (scopes.some((scope) => held.includes(scope))) return next();
    refuse(request, response, 401, 'Unauthorized');
  };

const mediaType = (header: string | undefined): string => header?.split(';')[0]?.trim() ?? '';

/** No service at this address takes this: what a wrong media type or a wrong address gets. */
export const noHandler = (request: Request, response: Response): void => {
  const path = request.path.replace(/^\/services/, '');
  const { accept = '*/*', 'content-type': contentType = '' } = request.headers;
  const asked = request.method === 'GET' ? `${accept} ` : ` ${contentType}`;
  refuse(request, response, 400, `No handler found for ${path} ${asked}`);
};

/** Wants exactly this Accept; "any type" does as well where `any` says so. */
export const accepts =
  (type: string, any: boolean): RequestHandler =>
  (request, response, next) => {
    const accept = request.headers.accept ?? '*/*';
    if (mediaType(accept) === type || (any && accept.includes('*/*'))) return next();
    if (accept.includes('*/*')) {
      return refuse(request, response, 400, 'No context or unsupported content type');
    }
    noHandler(request, response);
  };

/** Wants exactly this Content-Type; a charset may follow. */
export const carries =
  (type: string): RequestHandler =>
  (request, response, next) => {
    if (mediaType(request.headers['content-type']) === type) return next();
    noHandler(request, response);
  };
