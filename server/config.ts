import { isAbsolute, resolve } from 'node:path';
import * as v from 'valibot';

/** What the environment may say, each setting with its meaning; the only reader of `process.env` in the server. */
const port = v.pipe(
  v.string(),
  v.regex(/^\d{1,5}$/, 'must be a port number'),
  v.transform(Number),
  v.maxValue(65_535, 'must be a port number'),
);

const origin = v.pipe(
  v.string(),
  v.check(
    isOrigin,
    'must be an http or https address without a path, such as https://mat.example.org',
  ),
  v.transform((text) => new URL(text).origin),
);

const environment = v.object({
  NODE_ENV: v.optional(
    v.pipe(
      v.picklist(['production', 'development', 'test'], 'must be production, development or test'),
      v.description('production refuses what is only safe on one machine'),
    ),
    'development',
  ),
  PLACEWEAVE_URL: v.optional(
    v.pipe(origin, v.description('the address at which browsers and platforms reach Placeweave')),
    'http://localhost:4600',
  ),
  PLACEWEAVE_PORT: v.optional(
    v.pipe(port, v.description('the port to listen on; 0 takes any free one')),
    '4600',
  ),
  PLACEWEAVE_MONGODB_URI: v.optional(
    v.pipe(
      v.string(),
      v.regex(/^mongodb(\+srv)?:\/\/\S+$/, 'must start with mongodb:// or mongodb+srv://'),
      v.description('a MongoDB replica set to use instead of the database that comes along'),
    ),
  ),
  PLACEWEAVE_DATA: v.optional(
    v.pipe(
      v.string(),
      v.nonEmpty('must name a folder'),
      v.description('the folder that holds the database that comes along'),
    ),
    '.data',
  ),
  PLACEWEAVE_FREE_MB: v.optional(
    v.pipe(
      v.string(),
      v.regex(/^\d{1,9}$/, 'must be a whole number of megabytes'),
      v.transform(Number),
      v.description('nothing more is written once less than this is free beside the data folder'),
    ),
    '256',
  ),
  PLACEWEAVE_SECRET: v.optional(
    v.pipe(
      v.string(),
      v.minLength(32, 'must have at least 32 characters'),
      v.description('signs and seals what must not be guessed; required in production'),
    ),
  ),
  PLACEWEAVE_LOG: v.optional(
    v.pipe(
      v.picklist(
        ['silent', 'error', 'warn', 'info', 'debug'],
        'must be silent, error, warn, info or debug',
      ),
      v.description('how much is logged'),
    ),
    'info',
  ),
});

export interface Config {
  readonly production: boolean;
  readonly url: string;
  readonly port: number;
  readonly mongodbUri: string | null;
  readonly dataFolder: string;
  readonly freeMegabytes: number;
  /** `null`: made once and kept in the data folder (never in production). */
  readonly secret: string | null;
  readonly logLevel: 'silent' | 'error' | 'warn' | 'info' | 'debug';
}

export type ConfigResult = { ok: true; config: Config } | { ok: false; complaints: string[] };

/** Reads the settings, or says of each bad one what it must be. Values are never repeated: some are secret. */
export function readConfig(env: Readonly<Record<string, string | undefined>>): ConfigResult {
  const read = v.safeParse(environment, withoutBlanks(env));
  if (!read.success) return { ok: false, complaints: read.issues.map(complaint) };
  const set = read.output;
  const production = set.NODE_ENV === 'production';
  const lacking = production ? lackingInProduction(set) : [];
  if (lacking.length > 0) return { ok: false, complaints: lacking };
  return {
    ok: true,
    config: {
      production,
      url: set.PLACEWEAVE_URL,
      port: set.PLACEWEAVE_PORT,
      mongodbUri: set.PLACEWEAVE_MONGODB_URI ?? null,
      dataFolder: absolute(set.PLACEWEAVE_DATA),
      freeMegabytes: set.PLACEWEAVE_FREE_MB,
      secret: set.PLACEWEAVE_SECRET ?? null,
      logLevel: set.PLACEWEAVE_LOG,
    },
  };
}

function lackingInProduction(set: v.InferOutput<typeof environment>): string[] {
  const lacking = [];
  if (set.PLACEWEAVE_SECRET === undefined)
    lacking.push('PLACEWEAVE_SECRET is required in production');
  if (!set.PLACEWEAVE_URL.startsWith('https:'))
    lacking.push('PLACEWEAVE_URL must be set to an https address in production');
  return lacking;
}

function complaint(issue: v.BaseIssue<unknown>): string {
  return `${v.getDotPath(issue) ?? 'the environment'} ${issue.message}`;
}

/** A variable set to nothing counts as not set: that is how compose files and shells leave one out. */
function withoutBlanks(env: Readonly<Record<string, string | undefined>>) {
  return Object.fromEntries(Object.entries(env).filter(([, value]) => value !== ''));
}

function absolute(folder: string): string {
  return isAbsolute(folder) ? folder : resolve(folder);
}

function isOrigin(text: string): boolean {
  if (!URL.canParse(text)) return false;
  const url = new URL(text);
  return /^https?:$/.test(url.protocol) && url.pathname === '/' && url.search + url.hash === '';
}
