/** The door to learning platforms: everything under `/lti`, and the tokens for their services. */
import express, {
  type ErrorRequestHandler,
  type Request,
  type RequestHandler,
  type Response,
  type Router,
} from 'express';
import type { Database } from '../database/open.ts';
import type { Log } from '../log.ts';
import type { Platforms } from '../platforms/store.ts';
import { type Admit, createConfirm } from './confirm.ts';
import { formBody } from './forms.ts';
import type { ServiceToken } from './grades.ts';
import { createKeySetRoute } from './keyset.ts';
import { createKeySets } from './keysets.ts';
import { createLaunches } from './launches.ts';
import { createLimit } from './limits.ts';
import { createLogin } from './login.ts';
import type { Outbound } from './outbound.ts';
import { createPages } from './pages.ts';
import { createPlugin } from './plugin.ts';
import { createProvider, LAUNCH_PATH } from './provider.ts';
import { createRefuse, type Refuse } from './refuse.ts';
import { ltijsSecret } from './registrar.ts';
import { launchStore } from './store.ts';
import { createTokens } from './tokens.ts';

export interface LtiParts {
  /** Our public origin. */
  url: string;
  /** At least 32 characters. */
  secret: string;
  connection: Database['connection'];
  platforms: Platforms;
  log: Log;
  outbound: Outbound;
  admit: Admit;
  /** False when the disk is full: then no launch may be begun, for each is written down. */
  hasRoom: () => boolean;
  /** The folder of the built pages. */
  pages: string;
}

export interface Lti {
  router: Router;
  platformToken: ServiceToken;
}

/**
 * Refused or malformed requests of one address in a minute that are explained and logged. Good ones are let in all
 * the same: a school has one address, and one child's mischief must not shut out the others.
 */
const MOST_REFUSED = 600;
/** Logins of one platform from one address, and launches of one platform, in a minute. */
const MOST_LOGINS = 3_000;
const MOST_LAUNCHES = 6_000;

export async function createLti(parts: LtiParts): Promise<Lti> {
  const { url, connection, platforms, log, outbound } = parts;
  const store = launchStore(connection);
  await Promise.all([store.prepare(), platforms.prepare()]);
  const provider = await createProvider(ltijsSecret(parts.secret), createPlugin(platforms, store));
  const pages = createPages(parts.pages);
  const refusedRequests = createLimit(MOST_REFUSED);
  const refuse = createRefuse({ log, refusedRequests });
  const shared = { url, platforms, store, pages, refuse };
  const login = createLogin({ ...shared, logins: createLimit(MOST_LOGINS) });
  const launch = createLaunches({
    ...shared,
    provider,
    keySets: createKeySets(outbound),
    launches: createLimit(MOST_LAUNCHES),
  });
  const confirm = createConfirm({ store, admit: parts.admit, log, refusedRequests });

  const router = express.Router({ caseSensitive: true });
  router.get('/lti/keys', safely(createKeySetRoute(store)));
  router.use('/lti', (req, res, next) => {
    if (parts.hasRoom()) next();
    else refuse(req, res, { code: 'diskFull' });
  });
  router.get('/lti/login', safely(login));
  router.post('/lti/login', formBody, safely(login));
  router.post(LAUNCH_PATH, formBody, safely(launch));
  router.post(`${LAUNCH_PATH}/confirm`, express.json({ limit: '4kb' }), safely(confirm));
  router.use('/lti', (req, res) => refuse(req, res, { code: 'nothingHere' }));
  router.use('/lti', faults(refuse, log));
  return { router, platformToken: createTokens({ platforms, provider, outbound }) };
}

/** A rejected promise of a route is an error like any other; left alone it would end the process. */
function safely(route: (req: Request, res: Response) => Promise<void>): RequestHandler {
  return (req, res, next) => {
    route(req, res).catch(next);
  };
}

/** What body parsers refuse was malformed; everything else is our own fault. */
function faults(refuse: Refuse, log: Log): ErrorRequestHandler {
  return (error, req, res, _next) => {
    const theirs = typeof error?.status === 'number' && error.status < 500;
    if (!theirs) log.error({ err: error, code: 'broken' }, 'launch failed');
    if (res.headersSent) res.destroy();
    else refuse(req, res, theirs ? { code: 'malformed', reason: error.type } : { code: 'broken' });
  };
}
