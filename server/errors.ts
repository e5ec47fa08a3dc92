/**
 * Every way in which a request can fail, in one place. `text` is for the person at the page and is shown for client
 * errors only; `detail` is for whoever reads the log. Neither may hold a name, a token or an answer.
 */
export const ERRORS = {
  notFound: {
    status: 404,
    text: 'There is nothing here.',
    detail: 'no route, or nothing of this person under this id',
  },
  noSession: {
    status: 401,
    text: 'This page is no longer signed in. Open the activity from your course again; your work is kept.',
    detail: 'bearer token missing, unknown, expired, or of a role that has changed since',
  },
  notYours: {
    status: 403,
    text: 'This page is not open to you.',
    detail: 'the role of the session does not allow this route',
  },
  notJson: {
    status: 400,
    text: 'The message could not be read.',
    detail: 'body is not JSON, or not sent as application/json',
  },
  badMessage: {
    status: 400,
    text: 'The message does not have the right form.',
    detail: 'body does not match the wire schema',
  },
  bodyTooLarge: {
    status: 413,
    text: 'The message is too large. Send the work in smaller parts.',
    detail: 'body above the limit of the route',
  },
  tooManyActions: {
    status: 413,
    text: 'Too many actions in one message. Send the work in smaller parts.',
    detail: 'more actions in a batch than the limit',
  },
  outOfOrder: {
    status: 400,
    text: 'The actions are not in the order in which they were done.',
    detail: 'n is not the next number of its client',
  },
  noSuchProblem: {
    status: 400,
    text: 'The action belongs to no problem of this activity.',
    detail: 'problem index outside the activity',
  },
  attemptFull: {
    status: 413,
    text: 'There is too much work in this attempt to keep more. Ask your teacher.',
    detail: 'the attempt would grow past its limit of actions',
  },
  moved: {
    status: 409,
    text: 'There is newer work on the mat. It is being put together.',
    detail: 'base is not the length of the attempt',
  },
  diskFull: {
    status: 503,
    text: 'Nothing can be kept at the moment.',
    detail: 'the disk that holds the database is full: free some space; nothing was acknowledged',
  },
  databaseAway: {
    status: 503,
    text: 'Nothing can be kept at the moment.',
    detail: 'the database does not answer; nothing was acknowledged',
  },
  busy: {
    status: 503,
    text: 'Nothing can be kept at the moment.',
    detail: 'a transaction met another one each time it was tried',
  },
  broken: {
    status: 500,
    text: 'Something went wrong.',
    detail: 'a fault in the program; see the error beside this code',
  },
} as const satisfies Record<string, { status: number; text: string; detail: string }>;

export type ErrorCode = keyof typeof ERRORS;

/** A failure as a value: its code, and values that may travel with it on the wire. */
export interface Refusal {
  readonly code: ErrorCode;
  /** Where in the message, such as `actions[3].n`. */
  readonly at?: string;
  readonly values?: Readonly<Record<string, unknown>>;
}

export type Outcome<T> = { ok: true; value: T } | { ok: false; refusal: Refusal };

export const done = <T>(value: T): { ok: true; value: T } => ({ ok: true, value });

export function refuse(
  code: ErrorCode,
  at?: string,
  values?: Readonly<Record<string, unknown>>,
): { ok: false; refusal: Refusal } {
  return { ok: false, refusal: { code, ...(at && { at }), ...(values && { values }) } };
}

/** The JSON that a refusal becomes on the wire. Only client errors show their text and place. */
export function wireError(refusal: Refusal) {
  const { status, text } = ERRORS[refusal.code];
  const shown = status < 500;
  const error = {
    code: refusal.code,
    text: shown ? text : 'Something went wrong on our side. Your work stays on this device.',
    ...(shown && refusal.at !== undefined && { at: refusal.at }),
  };
  return { status, body: { error, ...refusal.values } };
}
