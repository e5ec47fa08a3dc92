/** The file with which an administrator registers a platform. */
import * as v from 'valibot';
import { originOf } from './registration.ts';

const id = v.pipe(
  v.string('must be a text'),
  v.nonEmpty('must not be empty'),
  v.maxLength(255, 'must not be longer than 255 characters'),
);

const address = v.pipe(
  v.string('must be an address'),
  v.check(isAddress, 'must be an http or https address without a password'),
);

const origin = v.pipe(
  v.string('must be an address'),
  v.check((text) => originOf(text)[0] === text, 'must be like https://learn.example.org'),
);

const platformFile = v.strictObject({
  name: id,
  issuer: id,
  clientId: id,
  authUrl: address,
  tokenUrl: address,
  authServer: v.optional(v.nullable(id), null),
  jwksUrl: address,
  deployments: v.pipe(
    v.array(id, 'must be a list of deployment ids'),
    v.minLength(1, 'must name at least one deployment'),
    v.check((ids) => !ids.includes('*'), 'must name each deployment; there is none for all'),
  ),
  frameOrigins: v.optional(v.array(origin, 'must be a list of addresses'), []),
});

export type PlatformFile = v.InferOutput<typeof platformFile>;
export type FileRead = { ok: true; value: PlatformFile } | { ok: false; complaints: string[] };

/** Reads the file, or says of each bad entry what it must be. In production nothing is called without encryption. */
export function readPlatform(
  written: unknown,
  { production }: { readonly production: boolean },
): FileRead {
  const read = v.safeParse(platformFile, written);
  if (!read.success) return { ok: false, complaints: read.issues.map(complaint) };
  const plain = CALLED.filter((name) => !read.output[name].startsWith('https:'));
  const complaints = plain.map((name) => `${name} must be an https address in production`);
  return production && plain.length > 0
    ? { ok: false, complaints }
    : { ok: true, value: read.output };
}

const CALLED = ['authUrl', 'tokenUrl', 'jwksUrl'] as const;

function complaint(issue: v.BaseIssue<unknown>): string {
  const at = v.getDotPath(issue) ?? 'the file';
  if (issue.received === 'undefined') return `${at} is missing`;
  if (issue.expected === 'never') return `${at} is not known here`;
  return issue.message.startsWith('must')
    ? `${at} ${issue.message}`
    : `${at} does not have the right form`;
}

function isAddress(text: string): boolean {
  if (!URL.canParse(text)) return false;
  const { protocol, username, password } = new URL(text);
  return /^https?:$/.test(protocol) && username + password === '';
}
