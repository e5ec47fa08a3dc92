import { parseAction } from '../../engine/index.ts';
import { type ActionsMessage, LIMITS, type SentAction } from '../contract.ts';
import { done, type Outcome, refuse } from '../errors.ts';
import type { Entry } from './schema.ts';
import { keyOf, type Standing } from './work.ts';

type Fresh = Omit<Entry, 'aside'>;

/** A batch whose actions are all well-formed. */
export interface Batch {
  readonly base: number;
  readonly actions: readonly Fresh[];
}

export function readBatch(message: ActionsMessage): Outcome<Batch> {
  if (message.actions.length > LIMITS.actionsPerBatch) return refuse('tooManyActions', 'actions');
  const actions: Fresh[] = [];
  for (const [index, sent] of message.actions.entries()) {
    const read = readSent(sent, index);
    if (!read.ok) return read;
    actions.push(read.value);
  }
  return done({ base: message.base, actions });
}

function readSent({ client, n, at, problem, action }: SentAction, index: number): Outcome<Fresh> {
  const read = parseAction(action);
  if (!read.ok) return refuse('badMessage', `actions[${index}].action.${read.fault.at}`);
  return done({ client, n, at, problem, action: read.value });
}

/** What of a batch has not been seen yet; each client's actions must follow one another without a gap. */
export function freshOf({ actions }: Batch, standing: Standing): Outcome<Fresh[]> {
  const next = new Map(standing.marks);
  const met = new Set<string>();
  const fresh: Fresh[] = [];
  for (const [index, entry] of actions.entries()) {
    if (entry.problem >= standing.works.length) {
      return refuse('noSuchProblem', `actions[${index}].problem`);
    }
    const due = next.get(entry.client) ?? 0;
    if (met.has(keyOf(entry)) || entry.n > due) return refuse('outOfOrder', `actions[${index}].n`);
    met.add(keyOf(entry));
    if (entry.n < due) continue;
    next.set(entry.client, due + 1);
    fresh.push(entry);
  }
  return done(fresh);
}

export interface Receipt {
  readonly length: number;
  /** Per client of the batch the highest `n` that is kept. */
  readonly acknowledged: Readonly<Record<string, number>>;
  readonly aside: readonly { readonly client: string; readonly n: number }[];
  readonly finished: boolean;
}

/** What the page may forget: said of the actions it sent, whether they came in now or before. */
export function receiptOf({ actions }: Batch, standing: Standing, finished: boolean): Receipt {
  const clients = new Set(actions.map(({ client }) => client));
  const acknowledged = [...clients].map((client): [string, number] => [
    client,
    (standing.marks.get(client) ?? 0) - 1,
  ]);
  const aside = actions
    .filter((entry) => standing.aside.has(keyOf(entry)))
    .map(({ client, n }) => ({ client, n }));
  return {
    length: standing.length,
    acknowledged: Object.fromEntries(acknowledged),
    aside,
    finished,
  };
}
