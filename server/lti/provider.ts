/**
 * ltijs, contained: it registers platforms, makes and keeps our keys, and validates every ordinary
 * launch a second time. Nothing reaches its application that the guard has not passed.
 */
import { IncomingMessage, ServerResponse } from 'node:http';
import { Socket } from 'node:net';
import type { Request, Response } from 'express';
import ltijs, { type DatabasePlugin, type LaunchToken } from 'ltijs';
import type { Registration } from '../platforms/registration.ts';
import type { Passed } from './guard.ts';
import { secondLook } from './plugin.ts';
import { type Checked, refused } from './refusals.ts';

export const LAUNCH_PATH = '/lti/launch';

/** ltijs asks nobody during a check; if it falls silent all the same, this ends the wait. Milliseconds. */
const PATIENCE = 10_000;
const SILENT = { reason: 'no answer' };

type Outcome = Checked<true>;
type Settle = (outcome: Outcome) => void;

export interface SecondCheck {
  token: string;
  state: string;
  passed: Passed;
}

export interface Provider {
  /** Sends a launch that passed the guard through ltijs, which may still refuse it. */
  check(launch: SecondCheck): Promise<Outcome>;
  /** Makes the registration with a new key pair, or changes the addresses of the one that exists. */
  register(registration: NewRegistration): Promise<void>;
  /** PEM. */
  privateKey(registration: Registration): Promise<string | null>;
}

export type NewRegistration = Pick<
  Registration,
  'name' | 'issuer' | 'clientId' | 'authUrl' | 'tokenUrl' | 'authServer' | 'jwksUrl'
>;

export async function createProvider(secret: string, plugin: DatabasePlugin): Promise<Provider> {
  // The module holds one instance for the whole process, which can be set up only once.
  const provider = new ltijs.Provider.constructor();
  const waiting = new WeakMap<Response, Settle>();
  provider.setup(
    secret,
    { plugin },
    {
      appRoute: LAUNCH_PATH,
      loginRoute: '/lti/unused/login',
      keysetRoute: '/lti/unused/keys',
      dynRegRoute: '/lti/unused/register',
      ltiaas: true,
      cors: false,
      devMode: false,
      // The guard has measured the age already, with more patience for slow school networks.
      tokenMaxAge: false,
      cookies: { secure: true, sameSite: 'None' },
    },
  );
  provider.onConnect((token, _req, res) => waiting.get(res)?.(agreement(token)));
  provider.onInvalidToken((_req, res) => waiting.get(res)?.(disagreement(res)));
  provider.onSessionTimeout((_req, res) => waiting.get(res)?.(disagreement(res)));
  await deployQuietly(() => provider.deploy({ serverless: true, silent: true }));

  return {
    check(launch) {
      const { req, res } = standIn(launch, secret);
      return new Promise((resolve) => {
        const silence = setTimeout(() => settle(refused('secondCheck', SILENT)), PATIENCE);
        const settle: Settle = (outcome) => {
          clearTimeout(silence);
          resolve(outcome);
        };
        waiting.set(res, settle);
        secondLook.run({ passed: launch.passed, nonceSpent: false }, () =>
          provider.app(req, res, () => settle(refused('secondCheck', SILENT))),
        );
      });
    },

    async register(registration) {
      await provider.registerPlatform({
        url: registration.issuer,
        name: registration.name,
        clientId: registration.clientId,
        authenticationEndpoint: registration.authUrl,
        accesstokenEndpoint: registration.tokenUrl,
        authorizationServer: registration.authServer ?? undefined,
        authConfig: { method: 'JWK_SET', key: registration.jwksUrl },
      });
    },

    async privateKey({ issuer, clientId }) {
      const platform = await provider.getPlatform(issuer, clientId);
      return platform === false ? null : platform.platformPrivateKey();
    },
  };
}

/**
 * A request and a response made for ltijs alone: it sees the form's two fields and the state cookie
 * that the guard vouches for, and nothing it writes reaches a browser.
 */
function standIn({ token, state, passed }: SecondCheck, secret: string) {
  const req = Object.assign(new IncomingMessage(new Socket()), {
    method: 'POST',
    url: LAUNCH_PATH,
    secret,
    query: {},
    body: { id_token: token, state },
    cookies: {},
    signedCookies: { [`state${state}`]: passed.registration.issuer },
  });
  return { req: req as unknown as Request, res: new ServerResponse(req) as unknown as Response };
}

/** Both readings of the token must name the same person in the same place. */
function agreement(token: LaunchToken): Outcome {
  const passed = secondLook.getStore()?.passed;
  const same =
    passed !== undefined &&
    token.iss === passed.registration.issuer &&
    token.clientId === passed.registration.clientId &&
    token.deploymentId === passed.launch.deployment &&
    token.user === passed.launch.subject;
  return same ? { ok: true, value: true } : refused('secondCheck', { reason: 'two readings' });
}

/** ltijs's own code, never its details: those repeat the request. */
function disagreement(res: Response): Outcome {
  const message: unknown = res.locals.err?.details?.message;
  const code = typeof message === 'string' && /^[\w ]{1,60}$/.test(message) ? message : 'other';
  return refused('secondCheck', { reason: code });
}

/** Its deployment adds a listener that ends the process at once on an interrupt; closing down is ours to do. */
async function deployQuietly(deploy: () => Promise<unknown>): Promise<void> {
  const before = new Set(process.listeners('SIGINT'));
  await deploy();
  for (const listener of process.listeners('SIGINT'))
    if (!before.has(listener)) process.off('SIGINT', listener);
}

/** ltijs refuses these by design or for want of leeway; the guard's checks are the same and stand alone. */
export function needsNoSecondCheck({ launch, claims }: Passed, now = Date.now() / 1000): boolean {
  const { exp, nbf } = claims as { exp: number; nbf?: number };
  const aging = exp <= now + 5 || (nbf !== undefined && nbf > now);
  return launch.message === 'review' || launch.subject === null || aging;
}
