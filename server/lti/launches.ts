/** The platform's post: guarded, validated a second time, and kept for a minute until its browser proves itself. */
import type { Request, Response } from 'express';
import { framingOrigins, type Registration } from '../platforms/registration.ts';
import { digest, randomHex } from './digest.ts';
import { fieldsOf, type LaunchForm, readLaunchForm } from './forms.ts';
import { examine, type GuardParts, type Passed } from './guard.ts';
import { pagePolicy, sendPage } from './headers.ts';
import type { Limit } from './limits.ts';
import type { Pages } from './pages.ts';
import { proofKeyOf } from './proof.ts';
import { needsNoSecondCheck, type Provider } from './provider.ts';
import { type Checked, refused } from './refusals.ts';
import type { Refuse } from './refuse.ts';
import { CLAIM, member } from './vocabulary.ts';

export interface LaunchParts extends GuardParts {
  provider: Pick<Provider, 'check'>;
  pages: Pages;
  refuse: Refuse;
  launches: Limit;
}

export function createLaunches(parts: LaunchParts) {
  return async (req: Request, res: Response): Promise<void> => {
    const fields = fieldsOf(req);
    const form = fields.ok ? readLaunchForm(fields.value) : fields;
    if (!form.ok) return parts.refuse(req, res, form.refusal);
    const examined = await examine(parts, form.value);
    const landed = examined.ok ? await land(parts, form.value, examined.value) : examined;
    const { registration } = examined;
    if (!landed.ok) return parts.refuse(req, res, landed.refusal, { registration });
    sendPage(res, 200, policyFor(registration), landed.value);
  };
}

/** The page to answer with, or why there is none. */
async function land(
  parts: LaunchParts,
  form: LaunchForm,
  passed: Passed,
): Promise<Checked<string>> {
  const { id } = passed.registration;
  if (parts.launches.reached(id)) return refused('platformBusy');
  parts.launches.count(id);
  if (form.kind === 'token' && !needsNoSecondCheck(passed)) {
    const agreed = await parts.provider.check({ ...form, passed });
    if (!agreed.ok) return agreed;
  }
  return await waitForBrowser(parts, passed, proofKeyOf(form.state ?? ''));
}

async function waitForBrowser(
  { store, pages }: LaunchParts,
  { launch, login, claims }: Passed,
  proofKey: string,
): Promise<Checked<string>> {
  const code = randomHex(32);
  const { locale } = launch;
  const html = await pages.launch({ code, proofKey, storage: login.storage, locale });
  if (html === null) return refused('pagesMissing');
  await store.keepPending({
    _id: digest(code),
    proof: login.proof,
    proofKey,
    launch: JSON.stringify(launch),
    initiation: opensOnce(claims) ? null : login.initiation,
    claimedAt: null,
    answer: null,
    createdAt: new Date(),
  });
  return { ok: true, value: html };
}

/** Moodle's launch id is good for one sign-in: there a second one in a tab cannot succeed. */
function opensOnce(claims: Passed['claims']): boolean {
  return member(claims[CLAIM.platform], 'product_family_code') === 'moodle';
}

function policyFor(registration: Registration | null): string {
  return pagePolicy(registration === null ? [] : framingOrigins(registration));
}
