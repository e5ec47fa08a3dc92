/** The two forms that platforms send: strings only, each field once, nothing long. */
import express, { type Request, type RequestHandler } from 'express';
import { type Checked, refused } from './refusals.ts';

export type Fields = Readonly<Record<string, string>>;

/** An id token of a few kilobytes is usual; this is the whole form. */
const BODY_LIMIT = '64kb';
const MOST_FIELDS = 40;
/**
 * Longest login, all of its parameters together, in characters. Hints may be signed tokens, but they go on to the
 * platform in one address, and few servers take a longer one; anybody can make us keep a login for ten minutes.
 */
const LONGEST = 8_192;

/** Reads a posted form; `extended: false` makes no objects of names. */
export const formBody: RequestHandler = express.urlencoded({
  extended: false,
  limit: BODY_LIMIT,
  parameterLimit: MOST_FIELDS,
});

/** The fields of a posted form, or of the query of a GET; a repeated name is refused. */
export function fieldsOf(request: Request): Checked<Fields> {
  const pairs = request.method === 'GET' ? queryOf(request.originalUrl) : bodyOf(request.body);
  if (pairs === null) return refused('malformed', { reason: 'repeated field' });
  return { ok: true, value: Object.fromEntries(pairs) };
}

function queryOf(address: string): [string, string][] | null {
  const pairs = [...new URLSearchParams(/\?(.*)/.exec(address)?.[1])];
  const names = new Set(pairs.map(([name]) => name));
  return names.size === pairs.length && names.size <= MOST_FIELDS ? pairs : null;
}

function bodyOf(body: unknown): [string, string][] | null {
  const pairs = Object.entries(body ?? {});
  return pairs.every(([, value]) => typeof value === 'string') ? pairs : null;
}

/** A platform's request to begin (Security Framework 1.0 §5.1.1.1; LTI Core 1.3 §4.1). */
export interface LoginForm {
  iss: string;
  clientId: string | null;
  storageFrame: string | null;
  /** All of the platform's own parameters, to begin again with. */
  initiation: Record<string, string>;
}

const REQUIRED = ['iss', 'login_hint', 'target_link_uri'] as const;
const OPTIONAL = [
  'client_id',
  'lti_message_hint',
  'lti_deployment_id',
  'lti_storage_target',
] as const;

export function readLogin(fields: Fields): Checked<LoginForm> {
  const missing = REQUIRED.find((name) => !fields[name]);
  if (missing !== undefined) return refused('malformed', { reason: `no ${missing}` });
  const sent = [...REQUIRED, ...OPTIONAL].filter((name) => fields[name]);
  const length = sent.reduce((sum, name) => sum + (fields[name]?.length ?? 0), 0);
  if (length > LONGEST) return refused('malformed', { reason: 'too long' });
  const initiation = Object.fromEntries(sent.map((name) => [name, fields[name] ?? '']));
  return {
    ok: true,
    value: {
      iss: fields.iss ?? '',
      clientId: fields.client_id || null,
      storageFrame: frameOf(fields.lti_storage_target),
      initiation,
    },
  };
}

/** A window name, never something a property of a window could be mistaken for. */
function frameOf(name: string | undefined): string | null {
  return name !== undefined && /^[\w-]{1,64}$/.test(name) ? name : null;
}

/** What comes back from the platform: a token, or word that it refused. `state` is ours. */
export type LaunchForm =
  | { kind: 'token'; state: string; token: string }
  | { kind: 'declined'; state: string | null; reason: string };

/** Our own states are 25 random bytes in hex; nothing else reaches anything that could choke on it. */
const STATE = /^[0-9a-f]{50}$/;

export function readLaunchForm(fields: Fields): Checked<LaunchForm> {
  const state = STATE.test(fields.state ?? '') ? (fields.state ?? '') : null;
  if (fields.error && !fields.id_token) {
    return { ok: true, value: { kind: 'declined', state, reason: errorCode(fields.error) } };
  }
  if (state === null) return refused('malformed', { reason: 'state' });
  if (!fields.id_token) return refused('malformed', { reason: 'no id_token' });
  return { ok: true, value: { kind: 'token', state, token: fields.id_token } };
}

/** OAuth error codes are short words (RFC 6749 §4.1.2.1); anything else is not repeated in a log. */
function errorCode(error: string): string {
  return /^[a-z_]{1,40}$/.test(error) ? error : 'other';
}
