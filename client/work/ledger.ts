import type { Entry, Sent, Tail } from '../api/attempt.ts';

/** Everything done in an attempt: what the server keeps, in its order, and what it has not yet acknowledged. */
export interface Ledger {
  readonly known: readonly Entry[];
  readonly unsent: readonly Sent[];
}

const keyOf = ({ client, n }: Sent): string => `${client} ${n}`;

const without = (unsent: readonly Sent[], known: readonly Entry[]): Sent[] => {
  const seen = new Set(known.map(keyOf));
  return unsent.filter((sent) => !seen.has(keyOf(sent)));
};

/** What this device still holds is laid on what the server has, in order; nothing twice. */
export const openLedger = (known: readonly Entry[], held: readonly Sent[]): Ledger => ({
  known,
  unsent: without(held, known),
});

export const addSent = (ledger: Ledger, sent: Sent): Ledger => ({
  ...ledger,
  unsent: [...ledger.unsent, sent],
});

/** `acknowledged`: the highest n stored of each page; `aside`: what of this batch is not judged. */
export const acknowledge = (
  ledger: Ledger,
  acknowledged: Readonly<Record<string, number>>,
  aside: readonly { readonly client: string; readonly n: number }[],
): Ledger => {
  const asides = new Set(aside.map(({ client, n }) => `${client} ${n}`));
  const stored = ({ client, n }: Sent) => n <= (acknowledged[client] ?? -1);
  const entries = ledger.unsent
    .filter(stored)
    .map((sent): Entry => (asides.has(keyOf(sent)) ? { ...sent, aside: 'aside' } : sent));
  return {
    known: [...ledger.known, ...entries],
    unsent: ledger.unsent.filter((sent) => !stored(sent)),
  };
};

/** The server has more than this page knew: its tail comes first, then what is still unsent. */
export const rebase = (ledger: Ledger, base: number, tail: Tail): Ledger =>
  openLedger([...ledger.known.slice(0, base), ...tail.actions], ledger.unsent);

/** The actions of one problem that count, in order. */
export const actionsOf = (ledger: Ledger, problem: number): Sent[] =>
  [...ledger.known.filter((entry) => entry.aside === undefined), ...ledger.unsent].filter(
    (sent) => sent.problem === problem,
  );

/** Whether the server keeps it. What a page beside this one holds unsent is neither known here nor this page's to drop. */
export const isKnown = ({ known }: Ledger): ((sent: Sent) => boolean) => {
  const seen = new Set(known.map(keyOf));
  return (sent) => seen.has(keyOf(sent));
};
