/**
 * Every reason why somebody is not let in. `advice` chooses what the person at the page is told and
 * can do; `detail` is for the administrator who reads the log. Neither holds anything of the message.
 */
export const ADVICE = {
  openAgain: {
    title: 'Please open the activity again',
    text: 'Go back to your course page and open the activity from there. Pages that were left open for long, or opened twice, do not work a second time.',
  },
  connect: {
    title: 'This learning platform is not connected yet',
    text: 'Ask the person who looks after your learning platform to connect Placeweave, and tell them the code below.',
  },
  settings: {
    title: 'The connection to your learning platform needs attention',
    text: 'Nothing is wrong with what you did. Tell the person who looks after your learning platform the code below; until then the activity cannot be opened.',
  },
  clock: {
    title: 'The clocks do not agree',
    text: 'Open the activity once more. If this page comes back, tell the person who looks after your learning platform that its clock and ours differ.',
  },
  notOffered: {
    title: 'This is not offered yet',
    text: 'Activities cannot be chosen from this window yet. Ask the person who set up Placeweave to add the activity to your course.',
  },
  notAllowed: {
    title: 'This work is not open to you',
    text: 'The work of another person can be seen by teachers of the course only. Open the activity from your course page to see your own.',
  },
  later: {
    title: 'Please try again in a few minutes',
    text: 'Go back to your course page and open the activity again in a few minutes. Your work is kept.',
  },
} as const;

type Advice = keyof typeof ADVICE;

interface Reason {
  status: number;
  advice: Advice;
  detail: string;
  /** Our own trouble: it does not count against the address it came from. */
  ours?: true;
}

export const REFUSALS = {
  malformed: {
    status: 400,
    advice: 'openAgain',
    detail: 'not a login or launch form: a field is missing, repeated, too long or of a wrong kind',
  },
  nothingHere: {
    status: 404,
    advice: 'openAgain',
    detail: 'no such address, or not by this method; dynamic registration is not offered',
  },
  tooMany: {
    status: 429,
    advice: 'later',
    detail: 'too many refused requests from one address within a minute',
  },
  platformBusy: {
    status: 503,
    advice: 'later',
    detail: 'more logins or launches from this platform within a minute than the limit',
    ours: true,
  },
  platformUnknown: {
    status: 400,
    advice: 'connect',
    detail: 'no registration has this issuer and client id',
  },
  platformUnclear: {
    status: 400,
    advice: 'settings',
    detail: 'the login names no client id and several registrations share the issuer',
  },
  platformSuspended: {
    status: 403,
    advice: 'settings',
    detail: 'the registration is suspended',
  },
  platformDeclined: {
    status: 403,
    advice: 'openAgain',
    detail: 'the platform refused our authentication request and said so',
  },
  loginUnknown: {
    status: 400,
    advice: 'openAgain',
    detail: 'the state was never issued, is older than ten minutes, or was used before',
  },
  tokenMalformed: {
    status: 400,
    advice: 'settings',
    detail: 'the id token is not a signed JWT with a JSON object inside',
  },
  algorithmRefused: {
    status: 401,
    advice: 'settings',
    detail: 'the id token is not signed with RS256',
  },
  keyUnnamed: { status: 401, advice: 'settings', detail: 'the id token names no key (kid)' },
  keyUnknown: {
    status: 401,
    advice: 'settings',
    detail: "the platform's key set has no usable RSA key of this id, after reading it again",
  },
  keysUnreachable: {
    status: 503,
    advice: 'later',
    detail: "the platform's key set cannot be read; see reason",
    ours: true,
  },
  signatureWrong: {
    status: 401,
    advice: 'settings',
    detail: "the signature does not fit the platform's key",
  },
  issuerWrong: {
    status: 401,
    advice: 'settings',
    detail: 'iss is not the issuer of the registration chosen at login',
  },
  audienceWrong: {
    status: 401,
    advice: 'settings',
    detail: 'aud is not our client id, or names others besides it without azp',
  },
  partyWrong: { status: 401, advice: 'settings', detail: 'azp is not our client id' },
  expired: { status: 401, advice: 'clock', detail: 'exp is missing or past' },
  notYetValid: { status: 401, advice: 'clock', detail: 'nbf is in the future' },
  issuedWrong: {
    status: 401,
    advice: 'clock',
    detail: 'iat is missing, in the future, or more than five minutes old',
  },
  nonceWrong: {
    status: 401,
    advice: 'openAgain',
    detail: 'nonce is missing or not the one issued with this state',
  },
  versionWrong: { status: 400, advice: 'settings', detail: 'the LTI version is not 1.3.0' },
  messageUnknown: {
    status: 400,
    advice: 'settings',
    detail: 'message_type is missing or none that this tool answers',
  },
  deepLinkingNotOffered: {
    status: 400,
    advice: 'notOffered',
    detail: 'a deep linking request: switch deep linking off for this tool',
  },
  deploymentMissing: {
    status: 400,
    advice: 'settings',
    detail: 'deployment_id is missing, empty or longer than 255 characters',
  },
  deploymentUnknown: {
    status: 403,
    advice: 'connect',
    detail:
      'this deployment is not approved: npm run -s platform -- approve REGISTRATION DEPLOYMENT',
  },
  targetWrong: {
    status: 400,
    advice: 'settings',
    detail: 'target_link_uri is missing or not an address of this tool',
  },
  resourceLinkMissing: {
    status: 400,
    advice: 'settings',
    detail: 'resource_link.id is missing, empty or longer than 255 characters',
  },
  subjectWrong: {
    status: 400,
    advice: 'settings',
    detail: 'sub is not 1 to 255 ASCII characters',
  },
  rolesMissing: { status: 400, advice: 'settings', detail: 'roles is missing or not a list' },
  reviewNotAllowed: {
    status: 403,
    advice: 'notAllowed',
    detail: "a review of somebody else's work by a person who does not teach the course",
  },
  secondCheck: {
    status: 401,
    advice: 'settings',
    detail: 'the second validation refused what the first accepted; see reason',
  },
  pagesMissing: {
    status: 503,
    advice: 'later',
    detail: 'the built pages are not there: npm run build',
    ours: true,
  },
  diskFull: {
    status: 503,
    advice: 'later',
    detail: 'the disk that holds the database is full: free some space',
    ours: true,
  },
  broken: { status: 500, advice: 'later', detail: 'a fault in the program; see err', ours: true },
} as const satisfies Record<string, Reason>;

export type RefusalCode = keyof typeof REFUSALS;

/** A refusal as a value. `reason` and `deployment` go to the log only. */
export interface LaunchRefusal {
  code: RefusalCode;
  reason?: string;
  deployment?: string;
}

export type Checked<T> = { ok: true; value: T } | { ok: false; refusal: LaunchRefusal };

export function refused(
  code: RefusalCode,
  more: Omit<LaunchRefusal, 'code'> = {},
): { ok: false; refusal: LaunchRefusal } {
  return { ok: false, refusal: { code, ...more } };
}

/** Whether a refusal counts against the address it came from. */
export function countsAgainstSender(code: RefusalCode): boolean {
  return !('ours' in REFUSALS[code]);
}
