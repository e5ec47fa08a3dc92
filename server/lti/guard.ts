/**
 * The guard: what a launch must pass before anything else sees it. The checks stand in the order of
 * the standard, and the login record is spent by the first of any number of posts with its state.
 */
import type { Registration } from '../platforms/registration.ts';
import type { Platforms } from '../platforms/store.ts';
import { checkClaims } from './claims.ts';
import { digest } from './digest.ts';
import type { LaunchForm } from './forms.ts';
import type { KeySets, PlatformKey } from './keysets.ts';
import type { VerifiedLaunch } from './launch.ts';
import { readLaunch } from './reading.ts';
import { type Checked, refused } from './refusals.ts';
import { verifySignature } from './signature.ts';
import type { LaunchStore, Login } from './store.ts';
import type { Claims } from './vocabulary.ts';

export interface GuardParts {
  url: string;
  store: LaunchStore;
  platforms: Platforms;
  keySets: KeySets;
}

/** Everything known of a launch that passed; lives no longer than its request. */
export interface Passed {
  launch: VerifiedLaunch;
  login: Login;
  registration: Registration;
  claims: Claims;
  key: PlatformKey;
}

/** How far a launch came: a refusal may know its registration, for the page and the log. */
export type Examined = Checked<Passed> & { registration: Registration | null };

export async function examine(parts: GuardParts, form: LaunchForm): Promise<Examined> {
  const login = form.state === null ? null : await parts.store.takeLogin(digest(form.state));
  const registration = login === null ? null : await parts.platforms.byId(login.registration);
  const outcome = await judge(parts, form, login, registration);
  return { ...outcome, registration };
}

async function judge(
  parts: GuardParts,
  form: LaunchForm,
  login: Login | null,
  registration: Registration | null,
): Promise<Checked<Passed>> {
  if (form.kind === 'declined') return refused('platformDeclined', { reason: form.reason });
  if (login === null || registration === null) return refused('loginUnknown');
  if (registration.status !== 'active') return refused('platformSuspended');
  const signed = await verifySignature(form.token, registration.jwksUrl, parts.keySets);
  if (!signed.ok) return signed;
  const { claims, key } = signed.value;
  const now = Math.floor(Date.now() / 1000);
  const checked = checkClaims(claims, { registration, nonce: login.nonce, url: parts.url, now });
  if (!checked.ok) return checked;
  const launch = readLaunch(claims, registration.id);
  if (!launch.ok) return launch;
  return { ok: true, value: { launch: launch.value, login, registration, claims, key } };
}
