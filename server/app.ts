import express, { type Express, json, type RequestHandler, type Router } from 'express';
import { attemptRoute, workRoutes } from './attempts/routes.ts';
import type { AttemptService } from './attempts/service.ts';
import { classRoutes } from './classroom/routes.ts';
import type { ClassService } from './classroom/service.ts';
import { LIMITS } from './contract.ts';
import { healthRoutes } from './health.ts';
import type { Log } from './log.ts';
import { resultRoutes } from './marks/routes.ts';
import type { MarkService } from './marks/service.ts';
import { assets, page } from './pages.ts';
import { requireSession, sessionRoutes } from './sessions/routes.ts';
import type { SessionService } from './sessions/service.ts';
import {
  failures,
  framedByPlatforms,
  logRequests,
  needsRoom,
  neverCached,
  nothingHere,
  onlyJson,
  securityHeaders,
} from './steps.ts';

export interface AppParts {
  readonly log: Log;
  readonly https: boolean;
  readonly lti: Router;
  readonly sessions: SessionService;
  readonly attempts: AttemptService;
  readonly marks: MarkService;
  readonly classroom: ClassService;
  readonly framingOrigins: () => Promise<readonly string[]>;
  readonly hasRoom: () => boolean;
  readonly ready: () => Promise<boolean>;
}

type Step = readonly [path: string, ...handlers: (RequestHandler | Router)[]];

/** What a request passes through, from top to bottom. */
function steps(parts: AppParts): Step[] {
  const { log, sessions, attempts, marks, classroom } = parts;
  const framed = framedByPlatforms(parts.framingOrigins);
  const headers = securityHeaders(parts.https);
  return [
    ['/', logRequests(log)],
    ['/health', headers, neverCached, healthRoutes(parts.ready)],
    ['/assets', headers, ...assets()],
    ['/work', framed, headers, neverCached, page],
    ['/class', framed, headers, neverCached, page],
    ['/print', framed, headers, neverCached, page],
    ['/present', framed, headers, neverCached, page],
    ['/api', headers, neverCached, onlyJson, needsRoom(parts.hasRoom), requireSession(sessions)],
    ['/api/attempts', workRoutes(attempts), resultRoutes(marks)],
    ['/api', json({ limit: LIMITS.body })],
    ['/api/attempt', attemptRoute(attempts)],
    ['/api/sessions', sessionRoutes(sessions)],
    ['/api/class', classRoutes(classroom)],
    ['/api', nothingHere],
    ['/', headers, parts.lti],
    ['/', nothingHere],
  ];
}

export function createApp(parts: AppParts): Express {
  const app = express();
  app.disable('x-powered-by');
  app.disable('etag');
  app.set('query parser', 'simple');
  app.set('trust proxy', 'loopback');
  for (const [path, ...handlers] of steps(parts)) app.use(path, ...handlers);
  app.use(failures(parts.log));
  return app;
}
