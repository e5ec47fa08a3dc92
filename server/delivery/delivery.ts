/** From a finished piece of work to the platform's gradebook. */
import type { Database } from '../database/open.ts';
import type { Transaction } from '../database/transaction.ts';
import { createGrades, type ServiceToken } from '../lti/grades.ts';
import type { Outbound } from '../lti/outbound.ts';
import { createAlarm } from './alarm.ts';
import { outboxStore } from './outbox-store.ts';
import { pausesStore } from './pauses-store.ts';
import { createPump } from './pump.ts';
import type { Reason } from './reasons.ts';
import { type DeliveryKey, type DeliveryRow, type ScoreToSend, unfit } from './row.ts';
import type { DeliveryLog, PlacementGrades } from './sender.ts';

/** What pupils and teachers are told. `none`: no mark is due for this person and column. */
export interface ShownDelivery {
  state: 'none' | 'waiting' | 'sent' | 'held' | 'stuck';
  reason: Reason | null;
  /** ms; null before the first try. */
  lastTriedAt: number | null;
}

export interface Delivery {
  /** Makes the indexes. */
  prepare(): Promise<void>;
  start(): Promise<void>;
  /** Waits for calls under way, at most as long as those may take. */
  stop(): Promise<void>;
  /**
   * Puts a mark into the outbox, in the caller's transaction: it is kept if and only if that one is. Sending begins
   * when the session ends. The same mark twice is one mark.
   */
  enqueueScore(session: Transaction, score: ScoreToSend): Promise<void>;
  deliveryState(key: DeliveryKey): Promise<ShownDelivery>;
  /** The states of a whole column by subject; who is not in it has the state `none`. */
  deliveryStates(column: Omit<DeliveryKey, 'subject'>): Promise<Map<string, ShownDelivery>>;
}

export interface DeliveryParts {
  connection: Database['connection'];
  outbound: Outbound;
  token: ServiceToken;
  placementGrades: PlacementGrades;
  log: DeliveryLog;
  clock?: () => number;
}

export function createDelivery(parts: DeliveryParts): Delivery {
  const { connection, outbound, token, placementGrades, log, clock = Date.now } = parts;
  const outbox = outboxStore(connection);
  const pauses = pausesStore(connection);
  const grades = createGrades(outbound, token, clock);
  const pump = createPump({ outbox, pauses, grades, placementGrades, log, clock });
  const wake = () => {
    pump.run().catch((err) => log.error({ err }, 'marks could not be sent'));
  };
  const awaited = new WeakSet<Transaction>();
  /** Nothing can be sent before the commit; a transaction that is run again is awaited once. */
  const wakeAfter = (session: Transaction) => {
    if (!awaited.has(session)) session.once('ended', wake);
    awaited.add(session);
  };
  const alarm = createAlarm(connection, wake, log);

  return {
    prepare: () => outbox.prepare(),
    async start() {
      await alarm.start();
      wake();
    },
    async stop() {
      await alarm.stop();
      await pump.stop();
    },
    async enqueueScore(session, score) {
      const complaint = unfit(score);
      if (complaint !== null) throw new RangeError(complaint);
      if (!session.inTransaction()) throw new Error('a mark is enqueued within a transaction');
      await outbox.put(session, score, clock());
      wakeAfter(session);
    },
    async deliveryState(key) {
      const row = await outbox.find(key);
      return row === null ? { state: 'none', reason: null, lastTriedAt: null } : shown(row);
    },
    async deliveryStates(column) {
      const rows = await outbox.ofLineItem(column);
      return new Map(rows.map((row) => [row.subject, shown(row)]));
    },
  };
}

function shown({ state, reason, lastTry }: DeliveryRow): ShownDelivery {
  return { state: state === 'sending' ? 'waiting' : state, reason, lastTriedAt: lastTry };
}
