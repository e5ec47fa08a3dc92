/**
 * ltijs, contained: it registers platforms, makes and keeps our keys, and validates every ordinary
 * launch a second time. Nothing reaches its application that the guard has not passed.
 */
import type { Request, Response } from 'express';
import ltijs, { type DatabasePlugin, type LaunchToken } from 'ltijs';
import type { Registration } from '../platforms/registration.ts';
import type { Passed } from './guard.ts';
import { secondLook } from './plugin.ts';
import { type Checked, refused } from './refusals.ts';

export const LAUNCH_PATH = '/lti/launch';

type Outcome = Checked<true>;
type Settle = (outcome: Outcome) => void;

export interface SecondCheck {
  token: string;
  state: string;
  passed: Passed;
}

export interface Provider {
  /** Sends a launch that passed the guard through ltijs, which may still refuse it. */
  check(launch: SecondCheck, req: Request, res: Response): Promise<Outcome>;
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
    check(launch, req, res) {
      return new Promise((resolve) => {
        const settle: Settle = (outcome) => {
          // It clears a state cookie that never existed.
          if (!res.headersSent) res.removeHeader('set-cookie');
          resolve(outcome);
        };
        waiting.set(res, settle);
        res.once('close', () => settle(refused('secondCheck', { reason: 'connection closed' })));
        present(launch, req);
        secondLook.run({ passed: launch.passed, nonceSpent: false }, () =>
          provider.app(req, res, () => settle(refused('secondCheck', { reason: 'not answered' }))),
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

/** Exactly what ltijs is to see: the form's two fields, and the state cookie that the guard vouches for. */
function present({ token, state, passed }: SecondCheck, req: Request): void {
  delete req.headers.authorization;
  req.query = {};
  req.body = { id_token: token, state };
  req.cookies = {};
  req.signedCookies = { [`state${state}`]: passed.registration.issuer };
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
