import type { Beliefs } from '../../pupils/beliefs.ts';
import type { AddendsAt } from '../../pupils/written.ts';

/**
 * The columns that somebody comes by who adds: no belief about adding changes what stands there, so that they are
 * gathered once, for all beliefs. `add`: adds with the beliefs that it is given.
 */
export function columnsMet(add: (beliefs: Beliefs) => void): AddendsAt[] {
  const columns: AddendsAt[] = [];
  add({
    add({ digits, notes }, right) {
      columns.push({ digits, notes });
      return right;
    },
  });
  return columns;
}
