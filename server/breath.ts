import { setImmediate } from 'node:timers/promises';

/** Longer than this nobody else is kept waiting, in ms. */
const LONGEST = 10;

/** For long work in small parts: called between two of them, it lets everybody else have a turn once it is time. */
export function createBreath(): () => Promise<void> {
  let since = performance.now();
  return async () => {
    if (performance.now() - since < LONGEST) return;
    await setImmediate();
    since = performance.now();
  };
}
