/** Reads a launch out of claims that passed every check. What is optional and ill-formed counts as absent. */
import type { VerifiedLaunch } from './launch.ts';
import { type Checked, refused } from './refusals.ts';
import { standing } from './roles.ts';
import { CLAIM, type Claims, isId, MESSAGE, member, stringsOf, textOf } from './vocabulary.ts';

export function readLaunch(claims: Claims, registration: string): Checked<VerifiedLaunch> {
  const { role, testUser } = standing(stringsOf(claims[CLAIM.roles]));
  const subject = claims.sub === undefined ? null : String(claims.sub);
  const launch: VerifiedLaunch = {
    message: claims[CLAIM.messageType] === MESSAGE.review ? 'review' : 'resource',
    registration,
    deployment: String(claims[CLAIM.deployment]),
    subject,
    role: subject === null ? 'guest' : role,
    testUser,
    context: contextOf(claims[CLAIM.context]),
    resourceLink: resourceLinkOf(claims[CLAIM.resourceLink]),
    custom: customOf(claims[CLAIM.custom]),
    grades: gradesOf(claims[CLAIM.grades]),
    roster: rosterOf(claims[CLAIM.roster]),
    locale: localeOf(member(claims[CLAIM.presentation], 'locale')),
    forUser: textOf(member(claims[CLAIM.forUser], 'user_id')),
    mentees: role === 'mentor' ? stringsOf(claims[CLAIM.mentees]).filter(isId) : [],
  };
  return mayReview(launch) ? { ok: true, value: launch } : refused('reviewNotAllowed');
}

/**
 * A platform may sign a review of anybody's work for anybody: `for_user` says whose work is meant,
 * never that it may be seen.
 */
function mayReview({ message, role, subject, forUser, mentees }: VerifiedLaunch): boolean {
  if (message !== 'review') return true;
  if (role === 'teacher' || role === 'assistant') return true;
  if (subject === null) return false;
  return forUser === null || forUser === subject || mentees.includes(forUser);
}

function contextOf(claim: unknown): VerifiedLaunch['context'] {
  const id = member(claim, 'id');
  return isId(id) ? { id, title: textOf(member(claim, 'title')) } : null;
}

function resourceLinkOf(claim: unknown): VerifiedLaunch['resourceLink'] {
  return { id: String(member(claim, 'id')), title: textOf(member(claim, 'title')) };
}

/** A variable that the platform does not know arrives as it was written, with its `$`. */
function customOf(claim: unknown): VerifiedLaunch['custom'] {
  if (typeof claim !== 'object' || claim === null) return {};
  const filled = Object.entries(claim).filter(
    ([, value]) => typeof value === 'string' && !value.startsWith('$'),
  );
  return Object.fromEntries(filled);
}

function gradesOf(claim: unknown): VerifiedLaunch['grades'] {
  if (typeof claim !== 'object' || claim === null) return null;
  return {
    lineitem: addressOf(member(claim, 'lineitem')),
    lineitems: addressOf(member(claim, 'lineitems')),
    scopes: stringsOf(member(claim, 'scope')),
  };
}

function rosterOf(claim: unknown): VerifiedLaunch['roster'] {
  const url = addressOf(member(claim, 'context_memberships_url'));
  return url === null ? null : { url };
}

function localeOf(value: unknown): string | null {
  return typeof value === 'string' && /^[\w-]{2,35}$/.test(value)
    ? value.replaceAll('_', '-')
    : null;
}

function addressOf(value: unknown): string | null {
  if (typeof value !== 'string' || !URL.canParse(value)) return null;
  return /^https?:$/.test(new URL(value).protocol) ? value : null;
}
