/** Counts per minute in this process: for addresses that send what must be refused, and for platforms far beyond any school. */
import { ipKeyGenerator } from 'express-rate-limit';

export interface Limit {
  reached(key: string): boolean;
  count(key: string): void;
}

const MINUTE = 60_000;
/** Above this many keys the oldest minute is forgotten at once: memory stays bounded under attack. */
const MOST_KEYS = 20_000;

export function createLimit(most: number, clock: () => number = Date.now): Limit {
  let minute = 0;
  let counts = new Map<string, number>();

  function current(): Map<string, number> {
    const now = Math.floor(clock() / MINUTE);
    if (now !== minute || counts.size > MOST_KEYS) {
      minute = now;
      counts = new Map();
    }
    return counts;
  }

  return {
    reached: (key) => (current().get(key) ?? 0) >= most,
    count(key) {
      const held = current();
      held.set(key, (held.get(key) ?? 0) + 1);
    },
  };
}

/** One key for one network: a whole IPv6 subnet belongs to one sender. */
export function senderOf(ip: string | undefined): string {
  return ip === undefined ? 'unknown' : ipKeyGenerator(ip);
}
