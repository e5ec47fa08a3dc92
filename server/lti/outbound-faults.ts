/** Names for what can go wrong between us and a platform, in words an administrator can act on later. */
import type { Fault } from '../../engine/child.ts';

/**
 * - `badAddress` not an http(s) URL, or one with a password in it
 * - `notHttps`, `refusedAddress` refused by our own rules in production
 * - `nameNotFound` the host name has no address
 * - `timeout` no connection or no whole answer in time
 * - `tls` the certificate or the handshake failed; `reason` is the TLS code
 * - `unreachable` no connection; `reason` is the system's code
 * - `broken` the connection ended before the answer was whole: the request may have been carried out
 * - `tooLarge` the answer exceeds the limit
 * - `redirectRefused` the answer points elsewhere and must not be followed
 * - `stopped` this client was closed
 */
export const OUTBOUND_FAULTS = [
  'badAddress',
  'notHttps',
  'refusedAddress',
  'nameNotFound',
  'timeout',
  'tls',
  'unreachable',
  'broken',
  'tooLarge',
  'redirectRefused',
  'stopped',
] as const;

export type OutboundFaultCode = (typeof OUTBOUND_FAULTS)[number];

export interface OutboundFault extends Fault {
  code: OutboundFaultCode;
  at: 'url';
  reason?: string;
  /** The redirect's status. */
  status?: number;
}

const BY_CODE: Readonly<Record<string, OutboundFaultCode>> = {
  REFUSED_ADDRESS: 'refusedAddress',
  TOO_LARGE: 'tooLarge',
  ENOTFOUND: 'nameNotFound',
  EAI_AGAIN: 'nameNotFound',
  ENODATA: 'nameNotFound',
  UND_ERR_CONNECT_TIMEOUT: 'timeout',
  UND_ERR_HEADERS_TIMEOUT: 'timeout',
  UND_ERR_BODY_TIMEOUT: 'timeout',
  UND_ERR_DESTROYED: 'stopped',
  UND_ERR_CLOSED: 'stopped',
  ECONNREFUSED: 'unreachable',
  EHOSTUNREACH: 'unreachable',
  ENETUNREACH: 'unreachable',
  EADDRNOTAVAIL: 'unreachable',
  ETIMEDOUT: 'timeout',
};

/** OpenSSL's verification codes and Node's own TLS codes (Node documentation, "X509 certificate error codes"). */
const TLS_CODE =
  /^(ERR_TLS_|ERR_SSL_|CERT_|CRL_|UNABLE_TO_|ERROR_IN_|SELF_SIGNED_|DEPTH_ZERO_|INVALID_CA|INVALID_PURPOSE|PATH_LENGTH_|HOSTNAME_MISMATCH|EPROTO)/;

/** The fault for an error thrown by the network; `late` when the total time was up. */
export function outboundFault(error: unknown, late: boolean): OutboundFault {
  if (late) return { code: 'timeout', at: 'url' };
  const reason = codeOf(error);
  const code = BY_CODE[reason] ?? (TLS_CODE.test(reason) ? 'tls' : 'broken');
  return code === 'tls' || code === 'unreachable' || code === 'broken'
    ? { code, at: 'url', reason }
    : { code, at: 'url' };
}

/** An AggregateError (several addresses tried) speaks through its first error. */
function codeOf(error: unknown): string {
  if (error instanceof AggregateError && error.errors.length > 0) return codeOf(error.errors[0]);
  const { code } = (error ?? {}) as { code?: unknown };
  return typeof code === 'string' ? code : 'unknown';
}
