/**
 * The start of a launch: the platform names a person to us, unsigned; we send the browser on to the
 * platform's sign-in with a fresh state and nonce, having left our proof with it.
 */
import type { Request, Response } from 'express';
import { framingOrigins, originOf, type Registration } from '../platforms/registration.ts';
import type { Platforms } from '../platforms/store.ts';
import { digest, randomHex } from './digest.ts';
import { fieldsOf, type LoginForm, readLogin } from './forms.ts';
import { pagePolicy, sendPage } from './headers.ts';
import { type Limit, senderOf } from './limits.ts';
import type { Pages } from './pages.ts';
import { proofCookie, proofKeyOf } from './proof.ts';
import { LAUNCH_PATH } from './provider.ts';
import { type Checked, refused } from './refusals.ts';
import type { Refuse } from './refuse.ts';
import type { LaunchStore, StorageTarget } from './store.ts';

export interface LoginParts {
  url: string;
  platforms: Platforms;
  store: LaunchStore;
  pages: Pages;
  refuse: Refuse;
  logins: Limit;
}

/** Ours for one login; all of them random, each known to one party only. */
interface Secrets {
  state: string;
  nonce: string;
  proof: string;
}

export function createLogin(parts: LoginParts) {
  return async (req: Request, res: Response): Promise<void> => {
    const fields = fieldsOf(req);
    const form = fields.ok ? readLogin(fields.value) : fields;
    if (!form.ok) return parts.refuse(req, res, form.refusal);
    const found = await findRegistration(parts, form.value);
    const { iss: issuer, clientId } = form.value;
    const named = { registration: found.ok ? found.value : null, issuer, clientId };
    if (!found.ok) return parts.refuse(req, res, found.refusal, named);
    const sender = `${found.value.id} ${senderOf(req.ip)}`;
    if (parts.logins.reached(sender))
      return parts.refuse(req, res, { code: 'platformBusy' }, named);
    parts.logins.count(sender);
    const sent = await begin(parts, form.value, found.value, req, res);
    if (!sent.ok) parts.refuse(req, res, sent.refusal, named);
  };
}

/** Without a client id one registration must be meant beyond doubt. */
async function findRegistration(
  { platforms }: LoginParts,
  { iss, clientId }: LoginForm,
): Promise<Checked<Registration>> {
  const [first, ...others] = await platforms.byIssuer(iss, clientId ?? undefined);
  if (first === undefined) return refused('platformUnknown');
  if (others.length > 0) return refused('platformUnclear');
  return first.status === 'active' ? { ok: true, value: first } : refused('platformSuspended');
}

async function begin(
  { url, store, pages }: LoginParts,
  form: LoginForm,
  registration: Registration,
  req: Request,
  res: Response,
): Promise<Checked<true>> {
  const secrets = { state: randomHex(25), nonce: randomHex(25), proof: randomHex(25) };
  const key = proofKeyOf(secrets.state);
  const storage = storageOf(form, registration);
  await store.keepLogin({
    _id: digest(secrets.state),
    nonce: digest(secrets.nonce),
    proof: digest(secrets.proof),
    registration: registration.id,
    storage,
    initiation: form.initiation,
    createdAt: new Date(),
  });
  const next = authAddress(url, form, registration, secrets);
  res.append('Set-Cookie', proofCookie(key, secrets.proof));
  if (cookieWillReturn(req, url)) {
    res.setHeader('Cache-Control', 'no-store');
    res.setHeader('Referrer-Policy', 'no-referrer');
    res.redirect(302, next);
    return { ok: true, value: true };
  }
  const html = await pages.login({ key, proof: secrets.proof, storage, next });
  if (html === null) return refused('pagesMissing');
  sendPage(res, 200, pagePolicy(framingOrigins(registration)), html);
  return { ok: true, value: true };
}

/** Platform storage is reached at the origin of the authentication address and nowhere else. */
function storageOf({ storageFrame }: LoginForm, { authUrl }: Registration): StorageTarget | null {
  const [origin] = originOf(authUrl);
  return storageFrame === null || origin === undefined ? null : { frame: storageFrame, origin };
}

/** Security Framework 1.0 §5.1.1.2. The redirect address is one and fixed: what is to be opened comes signed. */
function authAddress(
  url: string,
  { initiation }: LoginForm,
  { authUrl, clientId }: Registration,
  { state, nonce }: Secrets,
): string {
  const address = new URL(authUrl);
  const parameters = {
    scope: 'openid',
    response_type: 'id_token',
    response_mode: 'form_post',
    prompt: 'none',
    client_id: clientId,
    redirect_uri: url + LAUNCH_PATH,
    login_hint: initiation.login_hint ?? '',
    state,
    nonce,
  };
  for (const [name, value] of Object.entries(parameters)) address.searchParams.set(name, value);
  const hint = initiation.lti_message_hint;
  if (hint !== undefined) address.searchParams.set('lti_message_hint', hint);
  return address.href;
}

/**
 * A redirect costs one hop less than a page, but leaves nothing but the cookie. The browser says when
 * that will come back: in a window of its own, in a frame with storage access, within one site. From
 * a page of our own the redirect would be held against that page's policy.
 */
function cookieWillReturn(req: Request, url: string): boolean {
  const site = req.get('sec-fetch-site');
  if (!keepsSecureCookies(url) || site === 'same-origin') return false;
  return (
    req.get('sec-fetch-dest') === 'document' ||
    req.get('sec-fetch-storage-access') === 'active' ||
    site === 'same-site'
  );
}

function keepsSecureCookies(url: string): boolean {
  const { protocol, hostname } = new URL(url);
  return protocol === 'https:' || hostname === 'localhost' || hostname.endsWith('.localhost');
}
