/**
 * The one client for every call to a platform: token, key set, line item, score, result, roster.
 * The address that was checked is the address that is connected to, for the check sits in the name
 * resolution of the socket itself: a name that answers differently the second time gains nothing.
 */
import { isIP, type LookupFunction } from 'node:net';
import { Agent, request as call, type Dispatcher } from 'undici';
import type { Result } from '../../engine/child.ts';
import { isPublicAddress, type Resolve, resolveByName } from './outbound-addresses.ts';
import { type OutboundFault, outboundFault } from './outbound-faults.ts';

export interface OutboundRequest {
  url: string;
  /** GET when left out. */
  method?: 'GET' | 'POST' | 'PUT' | 'DELETE';
  /** Names in lower case. */
  headers?: Readonly<Record<string, string>>;
  body?: string;
}

/** Any answer of the other side, whatever its status. Header names in lower case; the body as text. */
export interface OutboundAnswer {
  status: number;
  headers: Readonly<Record<string, string>>;
  body: string;
}

export interface Outbound {
  send(request: OutboundRequest): Promise<Result<OutboundAnswer, OutboundFault>>;
  /** Ends open connections; a call under way fails as `stopped`. */
  close(): Promise<void>;
}

export interface OutboundLimits {
  /** Until the connection stands, TLS included, in ms. */
  connect: number;
  /** From the call to the last byte of the answer, redirects included, in ms. */
  total: number;
  /** Largest body read, in bytes. */
  bytes: number;
}

const LIMITS: OutboundLimits = { connect: 5_000, total: 10_000, bytes: 1_048_576 };
const MOST_REDIRECTS = 3;

export interface OutboundOptions {
  /** In production: https only, and public addresses only. */
  production: boolean;
  resolve?: Resolve;
  limits?: Partial<OutboundLimits>;
  /** Stands in for the network. */
  dispatcher?: Dispatcher;
}

export function createOutbound(options: OutboundOptions): Outbound {
  const limits = { ...LIMITS, ...options.limits };
  const dispatcher = options.dispatcher ?? pinnedAgent(options, limits);
  return {
    async send(request) {
      const signal = AbortSignal.timeout(limits.total);
      try {
        return await follow(request, MOST_REDIRECTS);
      } catch (error) {
        return { ok: false, fault: outboundFault(error, signal.aborted) };
      }

      async function follow(step: OutboundRequest, left: number): ReturnType<Outbound['send']> {
        const refused = refusalOf(step.url, options.production);
        if (refused !== null) return { ok: false, fault: refused };
        const answer = await exchange(step, dispatcher, signal, limits.bytes);
        if (!isRedirect(answer.status)) return { ok: true, value: answer };
        const next = redirectTarget(step, answer);
        if (next === null || left === 0)
          return {
            ok: false,
            fault: { code: 'redirectRefused', at: 'url', status: answer.status },
          };
        return follow({ ...step, url: next }, left - 1);
      }
    },
    close: () => dispatcher.destroy(),
  };
}

function pinnedAgent(options: OutboundOptions, limits: OutboundLimits): Agent {
  const lookup = checkedLookup(options.resolve ?? resolveByName, options.production);
  return new Agent({ connect: { lookup, timeout: limits.connect } as object, connections: 16 });
}

/** What a URL alone tells: it must be http(s), carry no credentials, and in production be https and no private literal. */
function refusalOf(written: string, production: boolean): OutboundFault | null {
  if (!URL.canParse(written)) return { code: 'badAddress', at: 'url' };
  const url = new URL(written);
  if (!/^https?:$/.test(url.protocol) || url.username !== '' || url.password !== '')
    return { code: 'badAddress', at: 'url' };
  if (production && url.protocol !== 'https:') return { code: 'notHttps', at: 'url' };
  const literal = url.hostname.replace(/^\[|\]$/g, '');
  if (production && isIP(literal) !== 0 && !isPublicAddress(literal))
    return { code: 'refusedAddress', at: 'url' };
  return null;
}

/** A socket's name resolution that answers no private address in production: one such answer refuses the name. */
function checkedLookup(resolve: Resolve, production: boolean): LookupFunction {
  return (hostname, asked, callback) => {
    resolve(hostname).then(
      (found) => {
        const [first] = found;
        if (
          first === undefined ||
          (production && !found.every((one) => isPublicAddress(one.address)))
        )
          callback(named(first === undefined ? 'ENOTFOUND' : 'REFUSED_ADDRESS'), '');
        else if (asked.all) callback(null, [...found]);
        else callback(null, first.address, first.family);
      },
      (error) => callback(error, ''),
    );
  };
}

function named(code: string): NodeJS.ErrnoException {
  return Object.assign(new Error(code), { code });
}

async function exchange(
  { url, method = 'GET', headers = {}, body }: OutboundRequest,
  dispatcher: Dispatcher,
  signal: AbortSignal,
  most: number,
): Promise<OutboundAnswer> {
  const answer = await call(url, { method, headers, body: body ?? null, dispatcher, signal });
  return {
    status: answer.statusCode,
    headers: flatten(answer.headers),
    body: await textUpTo(most, answer.body),
  };
}

function flatten(headers: Record<string, string | string[] | undefined>): Record<string, string> {
  return Object.fromEntries(
    Object.entries(headers).map(([name, value]) => [name, [value ?? ''].flat().join(', ')]),
  );
}

async function textUpTo(most: number, body: AsyncIterable<Buffer>): Promise<string> {
  const chunks: Buffer[] = [];
  let length = 0;
  for await (const chunk of body) {
    length += chunk.length;
    if (length > most) throw named('TOO_LARGE');
    chunks.push(chunk);
  }
  return Buffer.concat(chunks).toString('utf8');
}

function isRedirect(status: number): boolean {
  return [301, 302, 303, 307, 308].includes(status);
}

/** Only a plain GET may be sent on, only to the same host by the same protocol, and never with a token. */
function redirectTarget(step: OutboundRequest, answer: OutboundAnswer): string | null {
  const location = answer.headers.location ?? '';
  const authorised = Object.keys(step.headers ?? {}).some((name) => /^authorization$/i.test(name));
  if ((step.method ?? 'GET') !== 'GET' || authorised || !URL.canParse(location, step.url))
    return null;
  const target = new URL(location, step.url);
  return target.origin === new URL(step.url).origin ? target.href : null;
}
