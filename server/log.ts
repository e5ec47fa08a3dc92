import { type DestinationStream, type Logger, pino } from 'pino';

export type Log = Logger;

/**
 * One JSON line an event. No line holds a name, a token, an answer or an address; the keys below are cut out wherever
 * they appear, as a second net under the rule that nobody logs them.
 */
export function createLog(level: string, destination?: DestinationStream): Log {
  const options = {
    level,
    base: { pid: process.pid },
    redact: { paths: SECRET.flatMap((key) => [key, `*.${key}`, `*.*.${key}`]), censor: '[cut]' },
    serializers: { err: faultOf },
  };
  return destination === undefined ? pino(options) : pino(options, destination);
}

const SECRET = [
  'authorization',
  'cookie',
  'token',
  'id_token',
  'access_token',
  'state',
  'code_verifier',
  'subject',
  'name',
  'email',
  'actions',
  'ip',
  'remoteAddress',
];

/** Class, code and stack of an error; a message may quote what a user sent, so its first line stays out of the stack. */
function faultOf(fault: unknown) {
  if (!(fault instanceof Error)) return { kind: typeof fault };
  const code = (fault as { code?: unknown }).code;
  return { kind: fault.constructor.name, code, stack: framesOf(fault) };
}

function framesOf(fault: Error): string[] {
  const lines = (fault.stack ?? '').split('\n').map((line) => line.trim());
  return lines.filter((line) => line.startsWith('at ')).slice(0, 12);
}
